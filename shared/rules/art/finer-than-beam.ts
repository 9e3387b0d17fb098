import { area } from '../../geometry/measure';
import { narrow, narrowGaps } from '../../geometry/narrow';
import type { NarrowPlace } from '../../geometry/narrow-place';
import { keptFor } from '../../plan/kept';
import type { LaserPlan, PlacedArt } from '../../plan/laser-plan';
import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { lengthWithin } from '../helpers/length-within';
import { narrowSpots } from '../helpers/spots';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Part of the art that may be that fine with no more than a word. */
const negligible = 0.02;
/** Limits are rounded up to this, mm, so that a depth being typed does not ask for all of it anew. */
const grain = 0.005;
/** What is looked for first, mm. */
const firstLook = 0.2;

const page: Page = {
    id: 'finer-than-beam',
    title: 'Details finer than the beam',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition:
        'Burnt lines are so narrow that their bottom does not reach half of the depth, or strips of wood between them so narrow that their top burns away. Ends and corners of lines do not count.',
    why: 'The beam is as wide as it is. A line much narrower than the spot gets only a part of its light and stays shallow: veneer does not sink into it, and a fill does not hold. A strip between two lines gets light from both sides and comes out lower than the face.',
    mend: 'Draw those lines wider, the art larger, or give an `offset`; a lens of shorter focus makes a smaller spot.',
    source: 'Own derivation: over a slot of width b the dose in its middle is F·(2Φ(b/2σ) − 1), over a strip F·2(1 − Φ(b/2σ)), with σ a quarter of the spot; the depth law of the coupon does the rest.',
};

export const finerThanBeam: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        const halves = new Set(
            plan.steps.flatMap(({ inlay }) => (inlay === undefined ? [] : [inlay.relief.index, inlay.pocket.index])),
        );
        const reliefs = new Set(plan.steps.flatMap(({ inlay }) => inlay?.relief.index ?? []));
        for (const { step, laser } of plan.steps) {
            if (step.kind !== 'engrave' || laser?.finest === undefined) continue;
            const { slot, rib } = laser.finest;
            // parts-vanish tells what the clearance takes of a veneer half.
            const taken = reliefs.has(step.index) ? 2 * (laser.edge + laser.growth) : 0;
            const slots = placesOf(laser, (art) => slotsOf(art, slot - 2 * laser.edge));
            const strips = placesOf(laser, (art) => stripsOf(art, rib + 2 * laser.edge)).filter(({ width }) => width >= taken);
            const places = [...slots, ...strips];
            if (places.length === 0) continue;
            const small = places.reduce((sum, place) => sum + place.area, 0) < negligible * area(laser.region);
            yield finding(page, {
                severity: small ? 'info' : 'warning',
                message: phrase`${[slotWords(slots, slot, laser.edge), stripWords(strips, rib, laser.edge)].filter((part) => part !== '').join('; ')} in ${step.name}.`,
                where: step.placements[0]?.where ?? step.where,
                step: step.index,
                spots: narrowSpots(laser.blank, places),
                fixes: halves.has(step.index) || strips.length > 0 ? [] : wider(step, laser, slots),
            });
        }
    },
};

/** Widths are those that are burnt: `edge` mm were added to either side of the drawn ones. */
function slotWords(slots: readonly NarrowPlace[], limit: number, edge: number): string {
    const [first] = slots;
    if (first === undefined) return '';
    const many = slots.length !== 1;
    return `${slots.length} line${many ? 's are' : ' is'} narrower than the ${showLength(limit)} that this beam digs to half of the depth, ${narrowest(first, 2 * edge)}`;
}

function stripWords(strips: readonly NarrowPlace[], limit: number, edge: number): string {
    const [first] = strips;
    if (first === undefined) return '';
    const many = strips.length !== 1;
    return `${strips.length} strip${many ? 's' : ''} of wood ${many ? 'are' : 'is'} narrower than the ${showLength(limit)} that keep their top, ${narrowest(first, -2 * edge)}`;
}

function narrowest({ width, x, y }: NarrowPlace, wider: number): string {
    return `${showLength(Math.max(0, width + wider))} at the narrowest (near ${showLength(x)}, ${showLength(y)})`;
}

/** Of drawings only: a picture's outlines are those of its pixels. Where they lie once the step has mirrored them. */
function placesOf({ placed, mirrorAxis }: LaserPlan, find: (art: PlacedArt) => readonly NarrowPlace[]): NarrowPlace[] {
    const found = placed.filter(({ bitmap }) => !bitmap).flatMap(find);
    const lying = mirrorAxis === undefined ? found : found.map((place) => ({ ...place, x: 2 * mirrorAxis - place.x }));
    return lying.sort((a, b) => a.width - b.width);
}

function slotsOf({ region }: PlacedArt, limit: number): readonly NarrowPlace[] {
    return within(limit, (rounded) => keptFor(region, `fine slots ${rounded}`, () => narrow(region, rounded)));
}

function stripsOf({ region }: PlacedArt, limit: number): readonly NarrowPlace[] {
    return within(limit, (rounded) => keptFor(region, `fine strips ${rounded}`, () => narrowGaps(region, rounded)));
}

/** Most art has nothing near that fine: a wider look, which costs less and holds for every depth that is typed, comes first. */
function within(limit: number, find: (rounded: number) => readonly NarrowPlace[]): readonly NarrowPlace[] {
    if (!(limit > 0)) return [];
    const fine = (place: NarrowPlace): boolean => place.kind !== 'tip';
    if (!find(roundedUp(Math.max(firstLook, limit), 0.05)).some(fine)) return [];
    return find(roundedUp(limit, grain)).filter((place) => fine(place) && place.width < limit);
}

function roundedUp(value: number, step: number): number {
    return Math.ceil(value / step - 1e-9) * step;
}

/** An offset that opens the lines, where it leaves enough between them. */
function wider(step: Engrave, laser: LaserPlan, slots: readonly NarrowPlace[]): Fix[] {
    const { slot, rib } = laser.finest!;
    const least = (slot - slots[0]!.width) / 2;
    const found = lengthWithin({ low: least, high: slot, best: least }, step.offset?.unit ?? 'mm');
    if (found === undefined) return [];
    if (placesOf(laser, (art) => stripsOf(art, rib + 2 * found.mm)).length > 0) return [];
    const title = phrase`Give ${step.name} an offset of ${found.text}`;
    return [
        {
            title,
            changes: [
                step.offset === undefined
                    ? { do: 'add', block: step.whole, statement: `offset ${found.text}` }
                    : { do: 'replace', where: step.offset.where, text: found.text },
            ],
        },
    ];
}
