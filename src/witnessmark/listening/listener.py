"""From a narration to drafts: the rules in their order, statement by statement.

Long because the order of the rules is what this file is about: what one takes, the next does not see.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from witnessmark.listening.absences import answered_no
from witnessmark.listening.answers import answered_nothing
from witnessmark.listening.beside import Item, give_reasons
from witnessmark.listening.clauses import Clause
from witnessmark.listening.counts import number_of, told_count
from witnessmark.listening.descriptions import descriptions
from witnessmark.listening.devices import Devices
from witnessmark.listening.doubts import asks_which, asserted_before, doubted, leaves_open, only_hedges, read_before
from witnessmark.listening.drafts import Draft, Heard, Misheard, Open, SetAside
from witnessmark.listening.echoes import echoed
from witnessmark.listening.focus import Scene, part_of
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.identities import identified
from witnessmark.listening.judgements import judged
from witnessmark.listening.ledger import still_on
from witnessmark.listening.lexicon import Lexicon, lexicon
from witnessmark.listening.limits import reason_in, skipped
from witnessmark.listening.messages import NOTHING_HEARD
from witnessmark.listening.misheard import misheard
from witnessmark.listening.modes import is_requirement, mode, source, taught_from, told_from
from witnessmark.listening.narration import Narration
from witnessmark.listening.overcurrent import oversized
from witnessmark.listening.places import HOUSE, Place, entered, place_of
from witnessmark.listening.polarity import fault_roots
from witnessmark.listening.readings import read
from witnessmark.listening.referents import Discourse, Weighed, best, stored_weights, weighed
from witnessmark.listening.settling import answers, confirms, found_out, settled_by, settles
from witnessmark.listening.sizes import set_to, tells_more, times
from witnessmark.listening.statement import Statement
from witnessmark.listening.statements import Spoken, spoken, statement
from witnessmark.listening.subjects import about
from witnessmark.listening.terms import cues, listed, members
from witnessmark.listening.votes_drafts import draft_of, voted
from witnessmark.listening.words import Token, Word, quoted, root
from witnessmark.listening.zones import sliced
from witnessmark.packs.model import Packs

__all__ = ["listen", "listened"]

#: Seconds within which a requirement speaks of the statement before it.
_CONTRAST_WITHIN = 15.0
#: Below this share of known words nothing is drafted, in a narration that is not short; one of some length has to tell
#: of something that a house has.
_LEAST_KNOWN, _SHORT, _SOME_LENGTH = 0.35, 10, 20


#: What is guessed of a thing that could not be seen.
_GUESSES = frozenset({"i would guess", "i am guessing", "my guess", "probably", "maybe", "might be", "may be", "could be", "i think",
                      "possibly", "i suspect", "i guess", "i believe", "i assume"})  # fmt: skip
#: "They said okay" tells nothing.
_NOTHING_TOLD = frozenset({"okay", "ok", "fine", "yes", "sure", "alright", "good", "so"})
#: "Could be", "who knows" have so many words.
_SHORT_ANSWER = 6
#: Words that only take back what was told.
_TAKEN_BACK = frozenset({"no", "hang", "hold", "on", "wait", "sorry", "oh", "actually", "make", "that", "a", "minute", "second", "it", "is", "let",
                         "me", "count", "again", "well", "correction"})  # fmt: skip
#: A doubt of no more words, about nothing that it names, goes on with the one before it.
_LONG_DOUBT = 9


class _Listener:
    """Goes through the statements in order, keeping the scene and what was drafted."""

    def __init__(self, lexicon_: Lexicon, spoken: Sequence[Word], scene: Scene) -> None:
        self.lexicon = lexicon_
        self.spoken = spoken
        self.scene = scene
        self.items: list[Item] = []
        self.aside: list[SetAside] = []
        self.doubts: list[Draft] = []
        self.guesses: list[Misheard] = []
        self.devices = Devices(self.items, spoken)
        self.discourse = Discourse()
        self.weights: Mapping[str, float] = {}
        self.watch: Callable[[Weighed], None] | None = None

    def hear(self, statement: Statement, *, retracting: bool) -> None:
        """Take in one statement."""
        about(statement)
        before = self.items[-1].mode if self.items else None
        place = entered(statement.norms, statement.stems, self.lexicon) or self._led_in(statement)
        if place is not None and place != self.scene.place and not self._side_of_room(place, statement):
            self.scene.place = place
            if self.scene.focus is not None:
                self.scene.recent.append(self.scene.focus)
                self.scene.focus = None
            about(statement)
        self._refer(statement)
        how = mode(statement, before, self.items[-1].statement.norms if self.items else ())
        told = told_from(statement) if how is None else None
        if told is not None:
            self.hear(sliced(statement, 0, told), retracting=retracting)
            self.hear(sliced(statement, told, len(statement.norms)), retracting=False)
            return
        taught = taught_from(statement) if how == "teaching" else None
        if taught is not None:
            self.hear(sliced(statement, 0, taught), retracting=retracting)
            self.hear(sliced(statement, taught, len(statement.norms)), retracting=False)
            return
        if (
            how == "question"
            and asks_which(statement)
            and (doubt := doubted(statement, carried="question")) is not None
        ):
            self.items.append(Item(statement, self._doubt(statement, doubt)))
            return
        if how is not None:
            self._unsay(statement, how)
            self._set_aside(statement, how)
            self.items.append(Item(statement, [], how))
            return
        if before in {"teaching", "hypothetical"} and not statement.named and "one" in statement.norms[-2:]:
            statement.thing = self.items[-1].statement.thing or statement.thing  # "you'd want a pan; there isn't one"
        drafts = self._drafts(statement) or self._voted(statement, retracting=retracting)
        drafts = self._joined_to_last(statement, drafts)
        if retracting:
            self._take_back(drafts)
        elif statement.norms[:2] in (["no", "it"], ["no", "that"], ["no", "they"], ["no", "there"]):
            self._take_back(drafts, only_same=True)
        if statement.norms[0] == "but" and self.items:
            # "it is there but …": what is granted first is no judgement
            self.items[-1].drafts = [d for d in self.items[-1].drafts if d.why not in {"'is there'", "'are there'"}]
        if any(d.act in {"identified", "read"} for d in drafts):
            self.doubts = [d for d in self.doubts if not settled_by(d, drafts) or d in drafts]
        self.items.append(Item(statement, drafts))
        self.devices.add(drafts)
        self.guesses += misheard(statement, self.spoken)
        self._attend(statement, drafts)
        self.discourse.note(statement, [d.act for d in drafts])

    def _refer(self, st: Statement) -> None:
        """Take another thing spoken of than the rules do, where that is clearly likelier meant."""
        found = weighed(st, self.discourse)
        if found is None:
            return
        if self.watch is not None:
            self.watch(found)
        other = best(found.features, self.weights) if self.weights else 0
        if other:
            st.thing = found.candidates[other].thing
            st.referred = not st.named

    def _side_of_room(self, place: Place, st: Statement) -> bool:
        """Whether "south side", said in a room, is a side of that room."""
        here = self.lexicon.packs.sorts.get(self.scene.place.sort)
        inside = here is not None and not here.outside and self.scene.place != HOUSE
        return inside and place.name.endswith("side") and not {"out", "outside", "around"} & set(st.norms)

    def _led_in(self, st: Statement) -> Place | None:
        """The room that opens a statement before the name of a thing ("living room windows"): the speaker is there."""
        at = st.opening()
        place = st.place if st.named and st.subject is not None else None
        if place is None or st.subject is None or st.subject.start == at or place == self.scene.place:
            return None
        row = self.lexicon.packs.sorts.get(place.sort)
        opening = " ".join(st.norms[at : st.subject.start])
        return (
            place
            if row is not None and not row.outside and opening and opening in {place.name, place.name.rstrip("s")}
            else None
        )

    def _unsay(self, st: Statement, how: str) -> None:
        """Take back "that'd be a fire hazard" when "if it was still live" follows."""
        last = self.items[-1] if self.items else None
        if (
            how != "hypothetical"
            or last is None
            or last.mode is not None
            or st.fresh
            or st.norms[0] not in {"if", "unless"}
        ):
            return
        told = any(d.act == "doubted" for d in last.drafts)
        if "would" in last.statement.norms and not told and not {"not", "i", "we"} & set(last.statement.norms):
            gone = list(last.drafts)
            self.doubts = [d for d in self.doubts if d not in gone]
            self.devices.forget(gone)
            last.drafts.clear()
            last.mode = how
            self.aside.append(SetAside(last.statement.start, last.statement.end, last.statement.slice_text(), how))

    def _set_aside(self, statement: Statement, reason: str) -> None:
        last = self.aside[-1] if self.aside else None
        text = statement.slice_text()
        if last is not None and last.reason == reason and self.items and self.items[-1].mode == reason:
            self.aside[-1] = SetAside(last.start, statement.end, f"{last.text} {text}", reason)
        else:
            self.aside.append(SetAside(statement.start, statement.end, text, reason))

    def _drafts(self, st: Statement) -> list[Draft]:
        doubt, limit = doubted(st), skipped(st)
        carried = self._carried() if doubt is None and limit is None else None
        if carried is not None:
            doubt = self._carry(st, carried)
        if limit is not None and doubt is not None and limit.why.endswith("ing'") and not {"i", "we"} & set(st.norms):
            limit = None  # "not turning, can't say if it's dead"
        if limit is not None and (doubt is None or "could not confirm" not in doubt.why):
            if not {"i", "we"} & set(st.norms) and "could" not in st.norms:
                # what hinders can be a fault of its own: "the hatch is too small to get through"
                faults = [d for d in judged(st) if d.condition_id is not None and not self._repeats(d, st)]
                if faults:
                    return [*faults, *self._limit(st, limit)]
            guessed = doubt is not None and doubt.why.removeprefix("doubt: ").strip("'") in _GUESSES
            return [*self._limit(st, limit), *(self._doubt(st, doubt) if doubt is not None and guessed else [])]
        if doubt is not None:
            seen = self._told_before(st) or self._read_before(st)
            return [*seen, *self._doubt(st, doubt)]
        after_skip = bool(self.items) and any(d.act == "skipped" for i in self.items[-2:] for d in i.drafts)
        if after_skip and st.norms[:2] == ["so", "no"]:
            return []  # "locked, so no furnace": it was not seen, it is not absent
        self._settle(st)
        if (st.cue("scopes", "advice") and "call" not in st.norms) or (
            st.begins("scopes", "intending") and not _looks_at_number(st)
        ):
            return self.devices.heard(st)
        if only_hedges(st):
            self._hedge(st)
            return []
        drafts: list[Draft] = []
        operation = self.devices.heard(st)
        drafts += operation
        judgement = judged(st)
        if not judgement and not operation:
            judgement = echoed(st, self.items) or self._answer(st)
        judgement = judgement or answered_nothing(st, self.items)
        judgement = self._oversized(st) or judgement
        many = told_count(st) if len(judgement) == 1 else None
        if many is not None and judgement[0].value is None:
            judgement = [replace(judgement[0], value=Decimal(many.number), unit="1")]
        adverse = any(d.condition == "adverse" for d in judgement)
        if not any(d.setting for d in operation) and not (is_requirement(st) and not st.instruments):
            drafts += self._readings(st, judgement)
        drafts += identified(st)
        if not operation or {"count", "counted"} & set(st.norms):
            numbered = [] if adverse or any(d.act == "read" for d in drafts) else number_of(st)
            drafts += descriptions(st, judgement, [*drafts, *numbered]) + numbered
        if st.instruments and any(d.act == "read" for d in drafts):
            judgement = [d for d in judgement if not _only_where(st, d)]
        judgement = [d for d in judgement if not self._counts_anew(d) and not self._says_more(st, d)]
        done = any(d.act == "stopped" or d.leaves not in {None, "as found"} for d in operation)
        told = any(d.act == "identified" for d in drafts)
        drafts += [
            d for d in judgement
            if not self._repeats(d, st) and not (d.condition == "sound" and ((done and not _responds(d)) or (told and _fits(d))))
        ]  # fmt: skip
        if not adverse and is_requirement(st):
            drafts += self._contrast(st)
        return drafts

    def _oversized(self, st: Statement) -> list[Draft]:
        """A breaker or fuse that is larger than its wire or its plate allows, by the numbers told."""
        before = [
            i.statement for i in self.items[-3:] if i.mode is None and st.start - i.statement.start < _CONTRAST_WITHIN
        ]
        found = oversized(st, before)
        if found is None:
            return []
        row = next((row for row in self.lexicon.packs.conditions.values() if row.rating_over == found.over), None)
        if row is None:
            return []
        why = f"{found.amperes} A where {found.allowed} A is the most"
        return [st.draft("saw", row.name, why, condition="adverse", condition_id=row.id, value=found.amperes, unit="A")]

    def _joined_to_last(self, st: Statement, drafts: list[Draft]) -> list[Draft]:
        """The drafts without a number that only says more of the one before: how large, how many, set to what."""
        last = self.items[-1] if self.items else None
        old = last.drafts[-1] if last is not None and last.mode is None and last.drafts else None
        if len(drafts) == 1 and self._put_right(st, drafts[0]):
            return []
        if last is None or old is None or len(drafts) > 1:
            return drafts
        value, unit, why = None, None, ""
        if drafts and tells_more(st, drafts[0], old):
            value, unit, why = drafts[0].value, drafts[0].unit, drafts[0].why
        elif not drafts or drafts[0].act in {"read", "identified"} or drafts[0].why.startswith("vote"):
            setting = set_to(st, old)
            many = times(st, old) if not drafts or drafts[0].attribute == "number" else None
            if setting is not None:
                (value, unit), why = setting, "set to"
            elif many is not None:
                value, unit, why = many, "1", "so many"
        if value is None:
            return drafts
        last.drafts[-1] = new = replace(old, value=value, unit=unit, end=st.end, last=st.tokens[-1].last, why=f"{old.why}; {why}",
                                        text=quoted(self.spoken, old.first, st.tokens[-1].last))  # fmt: skip
        self.devices.swap(old, new)
        return []

    def _put_right(self, st: Statement, new: Draft) -> bool:
        """Whether a number stands for the one just told, after nothing but "no, hang on": it is put right where it was told."""
        if (
            len(self.items) <= 1
            or self.items[-1].drafts
            or not set(self.items[-1].statement.norms) <= _TAKEN_BACK
            or st.named
        ):
            return False
        told = self.items[-2]
        for at, old in enumerate(told.drafts):
            if old.act == new.act == "read" and old.unit == new.unit and old.value is not None and told.mode is None:
                told.drafts[at] = replace(old, value=new.value, high=new.high, about=new.about, end=new.end, last=new.last,
                                          text=quoted(self.spoken, old.first, new.last), why=f"{old.why}; put right")  # fmt: skip
                self.aside.append(
                    SetAside(told.statement.start, told.statement.end, told.statement.slice_text(), "corrected")
                )
                return True
        return False

    def _voted(self, st: Statement, *, retracting: bool) -> list[Draft]:
        """What the vote says a statement is that no rule drafts."""
        draft = None if retracting or self.devices.joined is st else draft_of(st, voted(st, self.items))
        return [] if draft is None else [draft]

    def _repeats(self, draft: Draft, st: Statement) -> bool:
        """Whether the same condition of the same component was told just before, or only what should be done about it."""
        before = [d for item in self.items[-4:] for d in item.drafts]
        if draft.condition_id is None:
            comments = draft.why.strip("'") in listed("conditions", "comments")
            if (
                comments
                and not st.named
                and any(d.condition == "adverse" and d.component == draft.component for d in before[-3:])
            ):
                return True  # "that's a trip hazard" says what the crack means
            asks = draft.why.strip("'") in listed("scopes", "wanted") and not st.named
            return (
                asks and bool(before) and before[-1].condition == "adverse" and before[-1].component == draft.component
            )
        if draft.why.strip("'") in listed("conditions", "same"):
            return False
        faults = fault_roots(st.norms)
        return any(
            d.condition_id == draft.condition_id
            and d.component == draft.component
            and faults <= {root(w) for w in d.text.lower().split()}
            for d in before
        )

    def _counts_anew(self, draft: Draft) -> bool:
        """Whether a fault told before only gets another number ("three are leaning … it's two that are leaning"); it is put right."""
        if (
            draft.act != "saw"
            or draft.unit != "1"
            or draft.condition != "adverse"
            or {"more", "other", "another"} & set(draft.text.lower().split())
        ):
            return False
        for item in reversed(self.items[-4:]):
            for at, old in enumerate(item.drafts):
                same = old.unit == "1" and old.component == draft.component and old.part == draft.part
                if (
                    same
                    and old.value != draft.value
                    and draft.start - old.start < _CONTRAST_WITHIN
                    and (old.condition_id == draft.condition_id if draft.condition_id else old.why == draft.why)
                ):
                    item.drafts[at] = replace(old, value=draft.value, count=draft.count, end=draft.end, last=draft.last,
                                              text=quoted(self.spoken, old.first, draft.last), why=f"{old.why}; counted anew")  # fmt: skip
                    return True
        return False

    def _hedge(self, st: Statement) -> None:
        """An age or a year after which only "maybe" follows is a doubt, not a fact."""
        last = self.items[-1] if self.items else None
        told = last.drafts[-1] if last is not None and last.mode is None and last.drafts else None
        if last is None or told is None or told.act != "identified" or told.attribute not in {"age", "made"}:
            return
        doubt = replace(told, act="doubted", condition="unclear", sure=False, end=st.end, last=st.tokens[-1].last, why=f"{told.why}; hedged after",
                        text=quoted(self.spoken, told.first, st.tokens[-1].last))  # fmt: skip
        last.drafts[-1] = doubt
        self.doubts.append(doubt)

    def _says_more(self, st: Statement, draft: Draft) -> bool:
        """Whether a statement that names nothing only says more of what was judged just before; it is joined to that.

        "No leaks" after "the sink works", "it's weeping" after "the flange is corroded".
        """
        last = self.items[-1] if self.items and not st.named and draft.act == "saw" else None
        old = last.drafts[-1] if last is not None and last.mode is None and last.drafts else None
        if (
            last is None
            or old is None
            or old.act != "saw"
            or (old.condition, old.component) != (draft.condition, draft.component)
        ):
            return False
        if draft.condition == "adverse":
            begins = st.norms[st.opening() :]
            more = begins[:2] in (["it", "is"], ["that", "is"]) or begins[:1] == ["does"]
            apart = st.norms[0] == "and" or (
                old.condition_id and draft.condition_id and old.condition_id != draft.condition_id
            )
            if not more or apart:
                return False
        elif draft.count is not None or draft.why.strip("'") in listed("conditions", "same"):
            return False
        last.drafts[-1] = replace(
            old, end=draft.end, last=draft.last, text=quoted(self.spoken, old.first, draft.last), what=f"{old.what}; {draft.what}",
            condition_id=old.condition_id or draft.condition_id, why=f"{old.why}; {draft.why}",
        )  # fmt: skip
        return True

    def _readings(self, st: Statement, judgement: Sequence[Draft]) -> list[Draft]:
        previous = next((d for i in reversed(self.items[-12:]) for d in reversed(i.drafts) if d.act == "read"), None)
        found = read(st, previous, self.items[-1].statement if self.items else None)
        bad = next((d for d in judgement if d.condition == "adverse"), None)
        if bad is None or bad.why.endswith("'only'"):
            return found
        # The size of what is wrong belongs to it ("a crack an eighth of an inch wide"); a reading stands by itself
        # when its measure or its instrument is named.
        wrong = {root(w) for w in bad.what.split()} | {
            root(w) for w in st.norms if w in members("conditions", "adverse")
        }
        named = {id_ for _, _, ids in self.lexicon.measures.find(st.stems) for id_ in ids}
        row = self.lexicon.kind(st.thing.kind if st.thing else None)
        own = row.measures if row else ()
        # "two loose" is no reading like the one before
        with_units = any(q.form == "quantity" for q in st.quantities) or bool(
            self.items and self.items[-1].statement.instruments
        )
        return [
            d for d in found
            if (st.instruments or (d.measure in own and (d.measure in named or "told" in d.why or with_units))) and not wrong & {root(w) for w in (d.quantity or "").split()}
        ]  # fmt: skip

    def _limit(self, st: Statement, limit: Draft) -> list[Draft]:
        """A limitation; "it's locked" right after "couldn't get in" is its reason, not another one."""
        last = self.items[-1] if self.items else None
        shut = last.drafts[-1] if last is not None and last.mode is None and last.drafts else None
        if (
            last is not None
            and shut is not None
            and shut.act == "saw"
            and _spares(limit)
            and {"shut", "stuck"} & set(shut.text.lower().split())
        ):
            # "the hatch is painted shut and i will not break the paint"
            last.drafts[-1] = replace(
                limit, start=shut.start, first=shut.first, text=quoted(self.spoken, shut.first, limit.last), kind=shut.kind, part=shut.part,
                label=shut.label, place=shut.place, component=shut.component, what=f"{shut.what}: {limit.what}",
                reason=limit.reason or (reason_in(last.statement)),
            )  # fmt: skip
            return []
        if (
            last is not None
            and last.drafts
            and last.drafts[-1].act == "skipped"
            and (
                (not st.named and "i" not in st.norms)
                or st.norms[0] == "so"
                or (_spares(limit) and st.norms[st.opening()] == "i")
            )
        ):
            old = last.drafts[-1]
            last.drafts[-1] = replace(old, end=limit.end, last=limit.last, text=quoted(self.spoken, old.first, limit.last),
                                      what=f"{old.what}: {limit.what}", reason=old.reason or limit.reason)  # fmt: skip
            return []
        return [limit]

    def _answer(self, st: Statement) -> list[Draft]:
        """What "no" says of what was only named, or asked, just before."""
        last = self.items[-1] if self.items else None
        plain = last is not None and not last.drafts and last.mode in {None, "question"}
        return answered_no(last.statement, st) if last is not None and plain else []

    def _carried(self) -> str | None:
        """Why what follows is in doubt: the statement before it only said who tells it, or that it is a question."""
        last = self.items[-1] if self.items else None
        return leaves_open(last.statement) if last is not None and last.mode is None else None

    def _carry(self, st: Statement, why: str) -> Draft | None:
        """The doubt that the statement before opened and this one tells, as one."""
        doubt = doubted(st, carried=why)
        last = self.items[-1]
        old = next((d for d in last.drafts if d.act == "doubted"), None)
        if doubt is None or set(st.norms) <= _NOTHING_TOLD:
            return None
        last.drafts = [d for d in last.drafts if d is not old]
        self.doubts = [d for d in self.doubts if d is not old]
        first = last.statement.tokens[0].first
        return replace(
            doubt, start=last.statement.start, first=first, text=quoted(self.spoken, first, doubt.last),
            what=f"said by {source(last.statement) or 'somebody else'}: {st.said(st.opening())}" if why == "hearsay"
            else f"{last.statement.said(last.statement.opening())} {doubt.what}",
        )  # fmt: skip

    def _read_before(self, st: Statement) -> list[Draft]:
        """What an instrument showed before the statement doubts something else."""
        end = read_before(st)
        if end is None:
            return []
        part = sliced(st, 0, end)
        about(part)
        part.thing = st.thing if part.thing is None else part.thing
        return self._readings(part, [])

    def _told_before(self, st: Statement) -> list[Draft]:
        """What a statement says is wrong before it doubts the cause: "there's a stain, might be an old leak"."""
        end = asserted_before(st)
        if not end:
            return []
        part = sliced(st, 0, end)
        about(part)
        part.thing = st.thing if part.thing is None else part.thing
        faults = [d for d in judged(part) if d.condition == "adverse" and not self._repeats(d, part)]
        return faults or ([] if part.quantities == [] else self._readings(part, []))

    def _doubt(self, st: Statement, doubt: Draft) -> list[Draft]:
        last = next((i for i in reversed(self.items[-2:]) if i.drafts), None)
        asked = self._asked(st, doubt)
        if asked is not None:
            self.doubts.append(asked)
            return [asked]
        own = st.named or len(st.norms) > _LONG_DOUBT
        if "hearsay" not in doubt.why and not own and last is not None and last.drafts and last.drafts[-1].act == "doubted" and (
            last.drafts[-1].component == doubt.component
        ):  # fmt: skip
            # One doubt told in two statements.
            old = last.drafts[-1]
            merged = replace(
                old,
                end=doubt.end,
                last=doubt.last,
                text=quoted(self.spoken, old.first, doubt.last),
                what=f"{old.what} {doubt.what}",
            )
            last.drafts[-1] = merged
            self.doubts = [merged if d is old else d for d in self.doubts]
            return []
        self.doubts.append(doubt)
        return [doubt]

    def _asked(self, st: Statement, doubt: Draft) -> Draft | None:
        """The doubt of a question that the speaker cannot answer: "is that asbestos behind the heater, could be"."""
        last = next((i for i in reversed(self.items[-2:]) if i.drafts or len(i.statement.norms) > 1), None)
        short = not st.named and len(st.norms) <= _SHORT_ANSWER
        if last is None or last.mode != "question" or not short or st.start - last.statement.end > _CONTRAST_WITHIN:
            return None
        first = last.statement.tokens[0].first
        thing = last.statement.thing or st.thing
        if self.aside and self.aside[-1].reason == "question" and self.aside[-1].end >= last.statement.end:
            self.aside.pop()
        last.mode = None
        made = last.statement.draft("doubted", last.statement.said(last.statement.opening()), f"question; {doubt.why}", thing,
                                    condition="unclear", sure=False)  # fmt: skip
        return replace(made, end=doubt.end, last=doubt.last, text=quoted(self.spoken, first, doubt.last))

    def _settle(self, st: Statement) -> None:
        if self.doubts and found_out(st, self.doubts[-1]):
            self.doubts.pop()
            return
        thing, outright = st.thing, settles(st)
        answered = not outright and bool(self.doubts) and st.named and answers(st)
        if not self.doubts or not (outright or answered):
            return
        key = thing.key if thing is not None else ""
        for doubt in reversed(self.doubts):
            same = thing is None or doubt.kind == thing.kind or doubt.component == key
            if same and (outright or confirms(st, doubt)):
                self.doubts.remove(doubt)
                return

    def _contrast(self, st: Statement) -> list[Draft]:
        """What ought to be otherwise: of the statement just before, or of what this one names."""
        last = next((i for i in reversed(self.items) if i.mode is None), None)
        near = last is not None and st.start - last.statement.start <= _CONTRAST_WITHIN
        if (
            last is not None
            and near
            and not (st.named and last.statement.thing and st.thing and st.thing.kind != last.statement.thing.kind)
        ):
            if any(d.condition == "adverse" for d in last.drafts) or last.statement.thing is None:
                return []
            value = next((d for d in last.drafts if d.act == "read"), None)
            draft = last.statement.draft("saw", last.statement.said(last.statement.opening()), "ought to be otherwise", condition="adverse",
                                         value=value.value if value else None, unit=value.unit if value else None)  # fmt: skip
            last_word = st.tokens[-1].last
            return [replace(draft, end=st.end, last=last_word, text=quoted(self.spoken, draft.first, last_word))]
        if st.named:
            return [st.draft("saw", st.said(st.opening()), "ought to be otherwise", condition="adverse")]
        return []

    def _take_back(self, drafts: Sequence[Draft], *, only_same: bool = False) -> None:
        acts = {d.act for d in drafts}
        told = [i for i in self.items[-4:] if i.mode is None]
        last = next((i for i in reversed(told) if any(d.act in acts for d in i.drafts)), told[-1] if told else None)
        if last is None:
            return
        if only_same:
            attributes = {d.attribute for d in drafts if d.act == "identified"}
            gone = [d for d in last.drafts if d.act == "identified" and d.attribute in attributes]
        else:
            gone = [d for d in last.drafts if d.act in acts and d.condition in {x.condition for x in drafts}]
        for draft in gone:
            last.drafts.remove(draft)
        self.devices.forget(gone)
        if gone or (not only_same and not last.drafts):
            st = last.statement
            self.aside.append(SetAside(st.start, st.end, st.slice_text(), "corrected"))

    def _last_told(self) -> Item | None:
        """The last statement that can be meant by "scratch that": fragments that gave nothing are passed over."""
        verbs = GRAMMAR.aux | GRAMMAR.verbs | {"i", "we", "it", "they"}
        for item in reversed(self.items):
            if item.mode is None and (item.drafts or set(item.statement.norms) & verbs):
                return item
        return None

    def strike(self, statement: Statement) -> None:
        """What "scratch that" does: the statement before no longer holds."""
        last = self._last_told()
        if last is not None:
            self.doubts = [d for d in self.doubts if d not in last.drafts]
            self.devices.forget(last.drafts)
            last.drafts.clear()
            st = last.statement
            self.aside.append(
                SetAside(st.start, statement.end, f"{st.slice_text()} {statement.slice_text()}", "corrected")
            )

    def _attend(self, st: Statement, drafts: Sequence[Draft]) -> None:
        done = next((d for d in drafts if d.act in {"ran", "stopped"} and d.kind is not None), None)
        if done is not None and (st.thing is None or done.component != st.thing.key):
            self.scene.attend(part_of(done))
            return
        if st.thing is not None and (st.named or (st.referred and drafts)):
            absent = any(d.act == "absent" and (d.kind, d.part) == (st.thing.kind, st.thing.part) for d in drafts)
            if not absent or self.scene.focus is None:
                self.scene.attend(st.thing)
            return
        if st.mentions and not drafts and (cues("places", "moving").first(st.norms) or "start" in st.norms):
            named, meaning = st.mentions[0]
            del named
            self.scene.attend(self.scene.thing(meaning, self.scene.place))


def _only_where(st: Statement, draft: Draft) -> bool:
    """Whether a word for something wrong only says where a reading was taken: "meter on the stain reads fourteen"."""
    word = draft.why.strip("'")
    at = st.norms.index(word) if word in st.norms else 0
    return (
        at > 1
        and st.norms[at - 1] in GRAMMAR.determiners
        and st.norms[at - 2] in {"on", "at", "in", "over", "beside", "by", "near"}
    )


def _looks_at_number(st: Statement) -> bool:
    """Whether "let's see" tells what is read ("let's see a hundred and thirty eight at the tap")."""
    return bool(st.quantities) and "see" in st.norms[: st.quantities[0].start]


def _spares(limit: Draft) -> bool:
    """Whether a limit only says what was to be spared: "it's screwed shut, i'm not going to damage the paint"."""
    return limit.why.rstrip("'").endswith(("damage", "break", "force", "disturb"))


def _responds(draft: Draft) -> bool:
    """Whether a draft tells that a thing did what it was operated for ("i switched it on and it comes on")."""
    return draft.why.split("; ")[-1].strip("'") in listed("conditions", "responses")


def _fits(draft: Draft) -> bool:
    """Whether a draft only says that something is attached, covered and the like."""
    return draft.why.split("; ")[-1].strip("'") in listed("conditions", "fitted")


def _is_understood(made: Sequence[Token], lexicon_: Lexicon) -> bool:
    """Whether enough of the words are those of the packs and of the language."""
    if len(made) < _SHORT:
        return True
    return sum(t.stem in lexicon_.known or t.norm in lexicon_.known for t in made) >= _LEAST_KNOWN * len(made)


def _is_of_a_house(drafts: Sequence[Draft], said: Spoken) -> bool:
    """Whether anything was told of what a house has and was called by a name of it; in a sentence or two any name does."""
    named = {meaning.kind for row in said.components for meaning in row.meanings if not meaning.heard}
    return len(said.tokens) < _SOME_LENGTH or any(d.kind in named and not d.why.startswith("vote") for d in drafts)


def listen(narration: Narration, packs: Packs, *, place: str | None = None) -> Heard:
    """Draft entries from a narration.

    *place* is where the speaker is when it begins, in plain words. Nothing a narration holds raises; what could not
    be read of the file, and a narration that is not understood at all (WM611), stand in ``problems``.
    """
    return listened(narration, packs, place=place)


def listened(
    narration: Narration,
    packs: Packs,
    *,
    place: str | None = None,
    weights: Mapping[str, float] | None = None,
    watch: Callable[[Weighed], None] | None = None,
) -> Heard:
    """``listen`` with other weights of the ranking than the stored ones, and with a look at all that it weighs."""
    lexicon_ = lexicon(packs)
    said = spoken(narration.lines, lexicon_)
    nothing = Heard(narration.name, (), (), (), (), narration.problems)
    unheard = replace(nothing, problems=(*narration.problems, NOTHING_HEARD.at(narration.name, _size(said))))
    if not said.tokens or not _is_understood(said.tokens, lexicon_):
        return unheard
    listener = _Listener(lexicon_, said.words, Scene(lexicon_, place_of(place, lexicon_) if place else HOUSE))
    listener.weights = stored_weights() if weights is None else weights
    listener.watch = watch
    for clause in said.clauses:
        _hear(listener, said, clause)
    give_reasons(listener.items, said.words)
    drafts = [d for item in listener.items for d in item.drafts]
    told = any(row.reason in {"hypothetical", "teaching", "corrected"} for row in listener.aside)
    arrived = listener.scene.place.sort != HOUSE.sort
    if not drafts and not told and not listener.guesses and (not arrived or len(said.tokens) >= _SOME_LENGTH):
        return replace(unheard, set_aside=tuple(listener.aside))
    if drafts and not told and not _is_of_a_house(drafts, said):
        return unheard
    live = {id(d) for d in drafts}
    return Heard(
        narration.name, tuple(drafts), tuple(sorted(listener.aside, key=lambda row: row.start)),
        tuple(Open(d) for d in still_on(drafts)), tuple(Open(d) for d in listener.doubts if id(d) in live), narration.problems,
        tuple(listener.guesses),
    )  # fmt: skip


def _size(said: Spoken) -> str:
    count = len(said.words)
    return f"{count} words" if count != 1 else "1 word"


def _hear(listener: _Listener, said: Spoken, clause: Clause) -> None:
    """Hear one statement, what takes back an earlier one split off."""
    norms = [t.norm for t in said.tokens[clause.start : clause.end]]
    struck = cues("scopes", "retract_all").first(norms)
    before = clause.start + (struck[0] if struck else 0) - 1
    if struck and not (before >= 0 and said.tokens[before].norm in {"me", "us"}):  # not "don't let me forget that"
        listener.strike(statement(said, Clause(clause.start, clause.start + struck[1]), listener.scene))
        if struck[1] >= len(norms):
            return
        clause = Clause(clause.start + struck[1], clause.end)
        norms = norms[struck[1] :]
    taken_back = cues("scopes", "retract").at(norms, 0)
    if taken_back and taken_back[0] < len(norms):
        clause = Clause(clause.start + taken_back[0], clause.end)
    listener.hear(statement(said, clause, listener.scene), retracting=bool(taken_back))
