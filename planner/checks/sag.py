"""Shelves, tops, rails and bottoms of drawers that sag too far or bear too little under what the maker puts on them.

Limits of the sag in the long run: the maker's own; else 1/16 in on each foot of span and no more than 1/4 in, which is
what ANSI/KCMA A161.1 sec. 5.1 allows cabinets under 15 lb/ft² for 7 days (read: timberpart.com); under that load the
sag at once counts. 1/32 in on each foot is about what the eye notices: common practice, no source. Where no load is
named nothing is said, unless a shelf or a bottom sags twice as far as that class allows. Only boards of a named timber
can be judged.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from planner.checks.facts import Facts
from planner.derive.spans import Bearing, Layer, bearings
from planner.domain.carcase import Carcase
from planner.domain.plan import Finding
from planner.domain.use import Borne, Load, LoadKind
from planner.domain.weights import Part
from planner.domain.words import Level
from planner.lengths import Grid, Unit, from_metres, metres
from planner.quantities import show_mass
from planner.wood.bending import edged, plank
from planner.wood.least import least
from planner.wood.loads import SEEN_RATIO, class_limit, spread
from planner.wood.sagging import BEARS, BREAKS, Bent, Stiff, bent

FAR = 2
"""So many times the class's limit is far beyond it, and said even where no load is named."""

_PA = {"GPa": 1e9, "MPa": 1e6}
_STEP = {Unit.INCH: 4 * Grid.IN_64.step_nm, Unit.MM: 10 * Grid.MM_TENTH.step_nm}
"""Remedies come in steps of 1/16 in or 1 mm."""

_THICKER = 3
_DEEPEST = 6
_SHORTEST = 4
"""A board is thickened to at most three times, edged with a strip of at most six times its thickness, or spans at
least a quarter of what it did; what needs more wants another design."""


_MARKS = "{marks}"
"""Stands in a text for the boards that it is about."""


def sag(facts: Facts) -> Iterator[Finding]:
    """Findings for the loaded boards of every carcase; boards of which the same is to be said share one."""
    alike: dict[Finding, list[str]] = {}
    for carcase in facts.project.carcases:
        for bearing in bearings(facts.project, carcase, facts.boards, facts.openings):
            if all(layer.material in facts.timbers for layer in bearing.layers):
                for finding in _Case(facts, carcase, bearing).findings():
                    alike.setdefault(replace(finding, marks=()), []).extend(finding.marks)
    for finding, marks in alike.items():
        yield replace(finding, marks=tuple(marks), text=finding.text.replace(_MARKS, ", ".join(marks)))


@dataclass(frozen=True, slots=True)
class _Case:
    """A board and what it bears."""

    facts: Facts
    carcase: Carcase
    bearing: Bearing

    def findings(self) -> Iterator[Finding]:
        load = self.carcase.use.load(self.bearing.on)
        if load is None:
            yield from self._under_no_load()
            return
        now = self.under(load)
        if now.stress > BEARS:
            yield self._too_great(load, now)
        if self._sag(load, now) > self._limit(load, self.span):
            yield self._sags(load, now)
        elif self.bearing.seen and self.carcase.use.sag is None and now.in_the_long_run > self.span / SEEN_RATIO:
            yield self._is_seen(load, now)

    @property
    def span(self) -> float:
        """Span in metres."""
        return metres(self.bearing.span_nm)

    def kg(self, load: Load, span: float) -> float:
        """What lies on it over a span."""
        drawer = self.bearing.drawer
        sizes = (span, metres(self.bearing.deep_nm), metres(self.bearing.above_nm))
        if drawer is not None:
            whole = self.facts.weights.find(drawer, Part.DRAWER)
            return whole.filled_kg if whole else spread(load, in_a_drawer=True).on(*sizes)
        return spread(load, in_a_drawer=self.bearing.on is Borne.DRAWERS).on(*sizes)

    def under(self, load: Load, span: float | None = None, layers: tuple[Stiff, ...] | None = None) -> Bent:
        """What a load does, as it is or with another span or other boards."""
        over = self.span if span is None else span
        off = None if self.bearing.drawer is None else metres(self.bearing.off_nm)
        return bent(layers or tuple(self.stiff(layer) for layer in self.bearing.layers), self.kg(load, over), over, off)

    def stiff(self, layer: Layer, thick: int | None = None, strip: tuple[int, int] | None = None) -> Stiff:
        """A layer as it is, of another thickness, or with a strip along its front edge."""
        timber = self.facts.timbers[layer.material]
        wide, high = metres(layer.wide_nm), metres(layer.thick_nm if thick is None else thick)
        section = plank(wide, high) if strip is None else edged(wide, high, metres(strip[0]), metres(strip[1]))
        return Stiff(section, timber.stiffness_gpa * _PA["GPa"], timber.strength_mpa * _PA["MPa"])

    def _sag(self, load: Load, now: Bent) -> float:
        return now.first if load.kind is LoadKind.CABINET_CLASS else now.in_the_long_run

    def _limit(self, load: Load, span: float) -> float:
        if self.carcase.use.sag is not None and load.kind is not LoadKind.CABINET_CLASS:
            return span / self.carcase.use.sag
        return class_limit(span)

    # --- what is found -------------------------------------------------------------------------------------

    def _under_no_load(self) -> Iterator[Finding]:
        """The published class, where it is missed by far."""
        if self.bearing.on is Borne.TOP or self.bearing.drawer is not None:
            return
        load = Load(kind=LoadKind.CABINET_CLASS)
        now = self.under(load)
        if now.first > FAR * class_limit(self.span):
            yield Finding(
                code="sag-class",
                level=Level.NOTE,
                marks=(self.bearing.mark,),
                text=f"No load is named for the {self.bearing.what} {_MARKS}. Under the published load of "
                f"cabinets, 15 lb/ft², it would sag {self.show(now.first)} over {self._span_said()}; "
                f"the class allows {self.show(class_limit(self.span))}.",
                remedy=f"{self._remedy(load)} Or say what it is to bear: [carcase.use].",
                source=spread(load).source,
            )

    def _sags(self, load: Load, now: Bent) -> Finding:
        return Finding(
            code="sag",
            level=Level.CAUTION,
            marks=(self.bearing.mark,),
            text=f"{self._loaded(load)} It sags {self.show(now.first)} at once and about "
            f"{self.show(now.in_the_long_run)} in the long run; at most {self.show(self._limit(load, self.span))} is "
            "wanted.",
            remedy=self._remedy(load),
            source=self._sources(load),
        )

    def _is_seen(self, load: Load, now: Bent) -> Finding:
        return Finding(
            code="sag-seen",
            level=Level.NOTE,
            marks=(self.bearing.mark,),
            text=f"{self._loaded(load)} It sags {self.show(now.first)} at once and about "
            f"{self.show(now.in_the_long_run)} in the long run. It bears that, but from "
            f"{self.show(self.span / SEEN_RATIO)} on the eye sees it.",
            remedy=self._remedy(load, SEEN_RATIO),
            source=self._sources(load),
        )

    def _too_great(self, load: Load, now: Bent) -> Finding:
        return Finding(
            code="load-too-great",
            level=Level.STOP if now.stress > BREAKS else Level.CAUTION,
            marks=(self.bearing.mark,),
            text=f"{self._loaded(load)} It is stressed to {round(100 * now.stress)} % of the strength printed for its "
            f"timber; {round(100 * BEARS)} % is enough for a load that stays.",
            remedy=self._remedy(load),
            source=f"{self._sources(load)} Strength: {self._timber_said()}.",
        )

    def _sources(self, load: Load) -> str:
        drawer = self.bearing.on is Borne.DRAWERS
        return f"Load: {spread(load, in_a_drawer=drawer).source}. In the long run 1.5 times: NDS 3.5.2, from memory."

    def _timber_said(self) -> str:
        timber = self.facts.timbers[self.bearing.layers[-1].material]
        return f"{timber.source}{timber.how_strength and f' ({timber.how_strength})'}"

    def _loaded(self, load: Load) -> str:
        what = f"{self.bearing.what.capitalize()} {_MARKS}: {self._span_said()} of span"
        of = "" if load.kind is LoadKind.OWN or self.bearing.drawer else f" of {load.kind}"
        return f"{what}, with {show_mass(self.kg(load, self.span), self.facts.project.unit)}{of} on it."

    def _span_said(self) -> str:
        return self.facts.show(self.bearing.span_nm)

    def show(self, length: float) -> str:
        """Metres for the eye, as a length."""
        return self.facts.show(from_metres(length))

    # --- what would do -------------------------------------------------------------------------------------

    def _remedy(self, load: Load, ratio: int | None = None) -> str:
        """The least change of each kind that clears it, found by trying."""
        step = _STEP[self.facts.project.unit]
        said = [*self._thicker(load, ratio, step), *self._edging(load, ratio, step), *self._shorter(load, ratio, step)]
        return f"{'; or '.join(said).capitalize()}." if said else "Take a stiffer timber, or support it in the middle."

    def _does(self, load: Load, ratio: int | None, span: float, layers: tuple[Stiff, ...]) -> bool:
        now = self.under(load, span, layers)
        limit = self._limit(load, span)
        if ratio is not None:
            limit = min(limit, span / ratio)
        return self._sag(load, now) <= limit and now.stress <= BEARS

    def _thicker(self, load: Load, ratio: int | None, step: int) -> Iterator[str]:
        *under, upper = self.bearing.layers
        others = tuple(self.stiff(layer) for layer in under)

        def fits(thick: int) -> bool:
            return self._does(load, ratio, self.span, (*others, self.stiff(upper, thick)))

        start = -(-(upper.thick_nm + 1) // step) * step
        more = least(lambda more: fits(start + more), step, _THICKER * upper.thick_nm - start)
        if more is not None:
            yield f"make it {self.facts.show(start + more)} thick"

    def _edging(self, load: Load, ratio: int | None, step: int) -> Iterator[str]:
        """A strip of the board's thickness along the front edge, for what is seen from the front."""
        *under, upper = self.bearing.layers
        if not self.bearing.seen or self.bearing.drawer is not None:
            return
        others, strip = tuple(self.stiff(layer) for layer in under), upper.thick_nm

        def fits(high: int) -> bool:
            return self._does(load, ratio, self.span, (*others, self.stiff(upper, strip=(strip, high))))

        start = -(-(upper.thick_nm + 1) // step) * step
        more = least(lambda more: fits(start + more), step, _DEEPEST * upper.thick_nm - start)
        if more is not None:
            yield f"glue a strip {self.facts.show(strip)} × {self.facts.show(start + more)} on edge to its front"

    def _shorter(self, load: Load, ratio: int | None, step: int) -> Iterator[str]:
        if self.bearing.drawer is not None:
            return
        layers = tuple(self.stiff(layer) for layer in self.bearing.layers)

        def fits(span: int) -> bool:
            return self._does(load, ratio, metres(span), layers)

        start = (self.bearing.span_nm - 1) // step * step
        less = least(lambda less: fits(start - less), step, start - self.bearing.span_nm // _SHORTEST)
        if less is not None:
            yield f"let it span no more than {self.facts.show(start - less)}"
