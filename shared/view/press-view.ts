import { gapSteps, touchColour } from '../bench/gap-scale';
import { type PressSection, pressSection } from '../bench/press-section';
import type { Pressed } from '../bench/virtual-press';
import type { Memo } from '../plan/memo';
import type { Plan } from '../plan/plan';
import { halvesOf, planPress } from '../plan/plan-press';
import { gapPicture } from '../sheets/gap-picture';
import { pressFacts, pressVerdict } from '../sheets/press-facts';
import type { FactView } from './bench-view';

/** Both halves of an inlay pressed together, as the bench view draws it. Lengths in mm on the pocket's blank. */
export interface PressView {
    readonly step: number;
    readonly good: boolean;
    readonly verdict: string;
    readonly facts: readonly FactView[];
    /** Gaps by colour, clear where no veneer lies: a PNG as data address, over a rectangle of the blank. */
    readonly picture: {
        readonly href: string;
        readonly x: number;
        readonly y: number;
        readonly width: number;
        readonly height: number;
    };
    readonly scale: readonly { readonly colour: string; readonly from: number; readonly to?: number }[];
    readonly touchColour: string;
    /** Where it is stopped, tightest first; a few of them. */
    readonly stops: readonly { readonly x: number; readonly y: number }[];
    readonly section?: PressSection;
}

/** Stops nearer to each other than this are one ring on the picture, as a part of its width. */
const apart = 0.12;
const mostStops = 5;

/** @param tell called now and then with the part that is done, 0 to 1; may throw to give up */
export function makePressView(plan: Plan, step: number, memo: Memo, tell: (part: number) => void): PressView | undefined {
    const inlay = plan.steps[step]?.inlay;
    const halves = halvesOf(plan, step, memo);
    const pressed = planPress(plan, step, memo, tell);
    if (inlay === undefined || halves === undefined || pressed === undefined) return undefined;
    const { cells } = pressed;
    const { good, sentence } = pressVerdict(inlay, pressed);
    const section = pressSection(halves, pressed.insertion, tellingHeight(pressed));
    return {
        step,
        good,
        verdict: sentence,
        facts: pressFacts(inlay, pressed),
        picture: {
            href: gapPicture(pressed),
            x: cells.x,
            y: cells.y,
            width: cells.columns * cells.cell,
            height: cells.rows * cells.cell,
        },
        scale: gapSteps.map(({ to, colour }, index) => ({
            colour,
            from: index === 0 ? 0 : gapSteps[index - 1]!.to,
            ...(Number.isFinite(to) ? { to } : {}),
        })),
        touchColour,
        stops: farApart(pressed),
        ...(section === undefined ? {} : { section }),
    };
}

/** The height at which a section shows most: of the veneer, or of what holds it up and what hangs because of it. */
function tellingHeight({ cells, gap, touching, bottoms }: Pressed): number {
    let best = { row: cells.rows / 2, count: 0 };
    for (let row = 0; row < cells.rows; row++) {
        let held = 0;
        let free = 0;
        for (let at = row * cells.columns; at < (row + 1) * cells.columns; at++) {
            if (touching[at] === 1) held += 1;
            else if (!Number.isNaN(gap[at]!)) free += 1;
        }
        const count = bottoms ? free : held * (free + 1);
        if (count > best.count) best = { row, count };
    }
    return cells.y + (best.row + 0.5) * cells.cell;
}

function farApart({ stops, cells }: Pressed): { x: number; y: number }[] {
    const least = apart * cells.columns * cells.cell;
    const kept: { x: number; y: number }[] = [];
    for (const { x, y } of stops) {
        if (kept.length >= mostStops) break;
        if (kept.every((other) => Math.hypot(other.x - x, other.y - y) >= least)) kept.push({ x, y });
    }
    return kept;
}
