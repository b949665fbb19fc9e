"""What the gauges of age can refuse; numbers 060 to 069."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["CANNOT_FIT", "NOT_ONE_SET", "NOT_YET_MADE", "NO_DATE", "NO_LIFE_LISTED", "NO_SUCH_WEEK", "WEARS_IN_NO_TIME"]

NOT_YET_MADE = Message(
    "WM060",
    "this date lies after the day it is looked at",
    "A part cannot be inspected before it was made: the date was misread, or a serial number was decoded by the rule of "
    "another maker.",
    "Read the plate again, or photograph it and leave the age open.",
)
NO_SUCH_WEEK = Message(
    "WM061",
    "this year has no such week",
    "Most years have 52 weeks and some have 53 (ISO 8601); a week beyond that is no week, but perhaps a month or a line.",
    "Read the plate again; if the maker counts otherwise, give the year alone.",
)
NO_DATE = Message(
    "WM062",
    "the date of making must be given in one way",
    "Without it there is no age, and two dates can contradict each other.",
    "Give made (2009-04-17), or year alone, or year with week or month.",
)
NOT_ONE_SET = Message(
    "WM063",
    "the law of lives must be given in exactly one way",
    "A mean life is not the scale of a Weibull law; two of them together would contradict each other.",
    "Give parameters, or shape with scale, or shape with mean_life.",
)
CANNOT_FIT = Message(
    "WM064",
    "no law of lives passes through these two ages",
    "The greater share of parts must fail at the greater age, and both shares lie between 0 and 100 %.",
    "Give the lower age with the lower share, such as 20 % by 15 years and 80 % by 30.",
)
WEARS_IN_NO_TIME = Message(
    "WM065",
    "these lives give no number",
    "The law of lives is so steep or so flat that its numbers pass what can be computed.",
    "Give a life range whose two ages lie between 1 % and a hundredfold apart.",
)
NO_LIFE_LISTED = Message(
    "WM066",
    "this source gives no life for this part",
    "A list that is silent about a part says nothing of its life, neither long nor short.",
    "Choose a source that speaks of it, or leave source out to see all of them.",
)
