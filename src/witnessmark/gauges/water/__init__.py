"""Water, waste and hot water: pressure, friction, hammer, drains, heaters, scalding, demand."""
