"""Which class does a word belong to? The closed classes of the language that the statement rules look at."""

from __future__ import annotations

from functools import cached_property

from witnessmark.listening.phrases import Phrases
from witnessmark.listening.terms import cues, members

__all__ = ["GRAMMAR", "Grammar"]


class Grammar:
    """Word classes from ``terms.toml`` and the few that are closed."""

    #: Verbs that say what something is.
    copulas = frozenset({"is", "are", "was", "were", "be", "am", "'s", "looks", "look", "seems", "feels"})
    #: What may stand between a verb and what it says.
    chain = frozenset({"not", "be", "been", "being", "to", "have", "had", "got", "still", "just", "also", "really", "all",
                       "very", "going", "never", "both", "even", "only"})  # fmt: skip
    #: After these a statement about what is known follows, not a new one.
    knowing = frozenset({"think", "thinking", "guess", "guessing", "say", "says", "said", "believe", "suppose", "told",
                         "hope", "know", "mean", "figure", "figured", "suspect", "assume", "sure", "bet", "thought",
                         "certain"})  # fmt: skip
    #: After these verbs comes what is done to it: a name there begins nothing new.
    taking = frozenset({
        "tell", "let", "give", "show", "told", "want", "ask", "call", "need", "make", "get", "keep", "leave", "put", "touch",
        "see", "replace", "find", "feel", "hear", "has", "have", "had", "walk", "walking", "run", "ran", "running", "open",
        "opened", "opening", "close", "closed", "closing", "test", "tested", "testing", "check", "checked", "checking", "push",
        "pushed", "pull", "pulled", "pulling", "turn", "turned", "turning", "fill", "filled", "filling", "hit", "took",
        "taking", "blocked", "shut", "flush", "flushed", "press", "pressed", "move", "moved", "moving", "drain", "drained",
        "draining", "start", "started", "starting", "light", "lit", "unplug", "plug", "set", "setting", "pour", "poured",
        "tripping", "trip", "reset", "looking", "access", "reach", "enter", "inspect", "operate", "operated", "remove",
        "removed", "use", "used", "using", "got", "leaving", "left", "tipped", "walked", "above", "seeing", "missing",
        "lacks", "gives", "shows", "tells", "gave", "saw", "shook", "counted", "smell", "held", "lifting", "cut", "lifted",
        "kicked", "like", "verify", "confirm", "evaluate", "view", "counting", "touching", "hold", "holding", "needs",
        "watch", "watching", "cross", "climb", "without", "on", "for", "to", "with",
    })  # fmt: skip
    #: Verbs that go with a particle ("goes up and down", "pumped down").
    phrasal = frozenset({
        "turned", "turn", "shut", "goes", "go", "comes", "come", "came", "kicked", "pumped", "fell", "opens", "backs", "falls",
        "kicks", "put", "went", "set", "lit", "fired", "moves", "switched", "rolled", "pulled", "took", "cut", "cycled", "get",
        "got", "filled", "fills", "torn", "tore", "backed", "broke", "boxed", "closed", "crawled", "walked", "kick", "fire",
        "popped", "screwed", "drains", "cranked", "poured",
    })  # fmt: skip
    particles = frozenset({"up", "down", "out", "on", "off", "in", "back", "through", "over"})
    #: Hedges whose subject is left out: "(it) could be".
    hedges = frozenset({"could be", "might be", "may be", "looks like", "seems like", "appears to", "maybe", "probably",
                        "possibly", "must be", "could have", "might have", "may have"})  # fmt: skip
    asking = frozenset({"did", "do", "can", "could", "would", "will", "should", "have"})
    persons = frozenset({"you", "we", "they", "i"})
    #: Verbs of doing, read as verbs only after a pronoun.
    doing = frozenset({
        "turned", "opened", "pushed", "put", "ran", "run", "tested", "filled", "checked", "pulled", "took", "poured", "hit",
        "broke", "drained", "closed", "started", "set", "flushed", "pressed", "blocked", "removed", "tried", "moved", "walked",
        "see", "saw", "smell", "hear", "feel", "think", "guess", "shook", "tapped", "counted", "tipped", "used", "found",
        "noticed", "treated", "said", "told", "left", "cut", "made", "did", "thought", "held", "lifted", "want", "like", "know",
        "hope", "call", "check", "test", "open", "look", "touch", "measured", "inspect", "recommend", "turn", "push",
        "make", "use", "let", "try", "get", "caught", "gave", "tripped", "stopped", "died", "love",
    })  # fmt: skip

    #: After these verbs a whole statement can follow ("i see the vent is loose").
    noticing = frozenset({"see", "saw", "seen", "feel", "hear", "tell", "show", "shows", "find", "found", "know", "notice", "say",
                          "make", "let", "keep", "get", "leave", "leaving", "got", "have", "has", "had", "on", "to", "for"})  # fmt: skip
    #: What things do in the past, beside verbs in -ed.
    happening = frozenset({"ran", "shut", "broke", "fell", "held", "caught", "blew", "quit", "stuck", "went", "came", "lit",
                           "stopped", "got", "kept", "rang", "spun"})  # fmt: skip

    def _members(self, name: str) -> frozenset[str]:
        return members("clauses", name)

    @cached_property
    def subjects(self) -> frozenset[str]:
        """Words that can be a subject by themselves."""
        return self._members("subjects")

    @cached_property
    def personal(self) -> frozenset[str]:
        """Persons as subjects."""
        return self._members("personal")

    @cached_property
    def conjunctions(self) -> frozenset[str]:
        """Words that join statements."""
        return self._members("conjunctions")

    @cached_property
    def subordinators(self) -> frozenset[str]:
        """Words that open a part of the same statement."""
        return self._members("subordinators")

    @cached_property
    def conditionals(self) -> frozenset[str]:
        """If, unless, whether."""
        return self._members("conditionals")

    @cached_property
    def aux(self) -> frozenset[str]:
        """Auxiliary verbs."""
        return self._members("auxiliaries")

    @cached_property
    def verbs(self) -> frozenset[str]:
        """Verbs in forms that only one thing does."""
        return self._members("verbs")

    @cached_property
    def plural(self) -> frozenset[str]:
        """Verbs in forms that several things do."""
        return self._members("plural_verbs")

    @cached_property
    def determiners(self) -> frozenset[str]:
        """Articles and the like."""
        return self._members("determiners")

    @cached_property
    def quantifiers(self) -> frozenset[str]:
        """How many."""
        return self._members("quantifiers")

    @cached_property
    def sides(self) -> frozenset[str]:
        """Bottom, top, end: parts that anything has."""
        return self._members("sides")

    @cached_property
    def adjectives(self) -> frozenset[str]:
        """Common adjectives."""
        return self._members("adjectives")

    @cached_property
    def prepositions(self) -> frozenset[str]:
        """Prepositions."""
        return self._members("prepositions")

    @cached_property
    def adverbs(self) -> frozenset[str]:
        """Adverbs that pass between subject and verb."""
        return self._members("adverbs")

    @cached_property
    def locatives(self) -> frozenset[str]:
        """Words that end a statement: here, there, everywhere."""
        return self._members("locatives")

    @cached_property
    def carrying(self) -> frozenset[str]:
        """Words after which what was said goes on: conjunctions, prepositions, adverbs, subordinators."""
        return self.conjunctions | self.prepositions | self.adverbs | self.subordinators | {"when"}

    @cached_property
    def holding(self) -> frozenset[str]:
        """Words that want something after them: verbs of doing, prepositions, conjunctions, "not"."""
        return self.taking | self.prepositions | self.conjunctions | {"not", "be", "just"}

    @cached_property
    def judging(self) -> frozenset[str]:
        """Single words for good and bad."""
        return members("conditions", "adverse") | members("conditions", "sound")

    @cached_property
    def openers(self) -> Phrases[str]:
        """Phrases that open a statement."""
        return cues("clauses", "openers")

    @cached_property
    def elided(self) -> Phrases[str]:
        """Beginnings of statements whose subject is left out."""
        return cues("clauses", "elided")

    @cached_property
    def closers(self) -> Phrases[str]:
        """Phrases with which a statement ends."""
        return cues("clauses", "closers")

    @cached_property
    def closer_ends(self) -> frozenset[str]:
        """The last words of the phrases with which a statement ends."""
        return frozenset(words[-1] for words, _ in self.closers)

    @cached_property
    def retracting(self) -> frozenset[str]:
        """The first words of what takes back what was said."""
        return frozenset(words[0] for table in self.retractions for words, _ in table)

    @cached_property
    def retractions(self) -> tuple[Phrases[str], Phrases[str]]:
        """What takes back what was said."""
        return cues("scopes", "retract"), cues("scopes", "retract_all")


GRAMMAR = Grammar()
