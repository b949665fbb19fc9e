"""The invented demo job: its raw inputs, and the steps a user would take with them."""
