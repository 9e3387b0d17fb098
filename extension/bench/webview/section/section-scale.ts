import type { SectionView } from '../../../../shared/view/bench-view';
import { dimensionsOf } from './section-dimensions';

/** How a section is drawn: heights in mm to px, with the dull middle of a thick board left out. */
export interface SectionScale {
    /** How many times larger heights are drawn than widths. */
    readonly times: number;
    /** px from the drawing's top to a height in mm above the blank's bottom. */
    readonly y: (height: number) => number;
    /** px from top where the board is broken off, when part of it is left out. */
    readonly breakAt?: number;
    readonly height: number;
}

const STEPS = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 800, 1000];
/** px given to what was dug and what stands proud, to the wood below it, and to the rest under a break. */
const RELIEF = 84;
const BELOW = 26;
const REST = 30;
const WHOLE = 150;
/** Above the drawing: a little air, and as many lines as there are heights to write. */
const TOP = 16;
const LINE = 14;
const ROOM = 24;

/**
 * A scale that serves every frame of a blank, so that the section does not jump from step to step.
 * `across` is the scale of widths, px for each mm.
 */
export function sectionScale(sections: readonly SectionView[], across: number): SectionScale {
    const lines = sections.reduce((most, section) => Math.max(most, dimensionsOf(section).length), 0);
    const top = sections.reduce((most, section) => Math.max(most, finite(section.top)), 0.01);
    const highest = sections.reduce((most, section) => Math.max(most, highestTop(section)), top);
    const floor = sections.reduce((least, section) => Math.min(least, lowestFloor(section)), top);
    const relief = Math.max(highest - floor, top * 0.02);
    const times = nice(RELIEF / (relief * across));
    const scale = times * across;
    const linear = (height: number) => TOP + LINE * lines + (highest - height) * scale;
    if (highest * scale <= WHOLE) return { times, y: linear, height: linear(0) + ROOM };
    const breakAt = linear(floor) + BELOW;
    const bottom = breakAt + REST;
    return {
        times,
        breakAt,
        height: bottom + ROOM,
        // Under the break only the blank's bottom and its backing keep a place of their own.
        y: (height) => (height <= 0 ? bottom - height * Math.min(scale, 40) : Math.min(linear(height), breakAt)),
    };
}

/** The lowest wood left under anything dug, with its tolerance; 0 where it goes right through. */
function lowestFloor({ spans, width }: SectionView): number {
    const wood = spans.filter(({ kind }) => kind === 'wood');
    const covered = wood.reduce((sum, { from, to }) => sum + to - from, 0);
    if (covered < width - 1e-6) return 0;
    return Math.max(
        0,
        wood.reduce((least, span) => Math.min(least, finite(span.band?.low ?? span.top)), Number.POSITIVE_INFINITY),
    );
}

function highestTop({ spans }: SectionView): number {
    return spans.reduce((most, span) => Math.max(most, finite(span.band?.high ?? span.top)), 0);
}

export function exaggeration(times: number): string {
    if (times === 1) return 'heights and widths to the same scale';
    return times > 1 ? `heights drawn ${times} times` : `heights drawn at 1 in ${Math.round(1 / times)}`;
}

function nice(ideal: number): number {
    return STEPS.findLast((step) => step <= ideal) ?? 1 / Math.ceil(1 / ideal);
}

function finite(value: number): number {
    return Number.isFinite(value) ? value : 0;
}
