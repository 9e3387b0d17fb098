import type { LaserPlan } from '../../plan/laser-plan';
import type { InlayPlan, LaserStep, Plan } from '../../plan/plan';
import { fromBase } from '../../quantity/quantity';
import { showLength, showNumber } from '../../quantity/show';
import type { Where } from '../../quantity/where';
import type { Change, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { pickText } from '../../recipe/pick-text';
import type { ArtPlacement, Placement } from '../../recipe/step';

/** In what two halves differ, as the end of "the halves differ", and how the veneer half is made like the pocket. */
export interface Difference {
    readonly words: string;
    readonly fixes: readonly Fix[];
}

/** Places nearer than this are the same, mm. */
const near = 0.1;

export function differenceOf(plan: Plan, { relief, pocket, reliefLaser, pocketLaser }: InlayPlan): Difference {
    const [one, other] = [artOf(relief), artOf(pocket)];
    // In all that differs at once: each by itself would leave them different.
    const like = (): Fix[] => {
        const [mine, theirs] = [one[0], other[0]];
        if (mine === undefined || theirs === undefined || one.length > 1 || other.length > 1) return [];
        const made = [
            ...(names(one) === names(other) ? [] : [sameArt(mine, theirs)]),
            ...(picks(one) === picks(other) ? [] : [samePicks(mine, theirs)]),
            ...(turns(one) === turns(other) ? [] : [sameTurn(mine, theirs)]),
        ];
        const changes = made.filter((change) => change !== undefined);
        return changes.length < made.length ? [] : [{ title: phrase`Make ${relief.name} like ${pocket.name}`, changes }];
    };
    if (names(one) !== names(other)) {
        const what = files(plan, one) === files(plan, other) ? 'the size of their art' : 'their art';
        return { words: ` in ${what} (${names(one)}; ${names(other)})`, fixes: like() };
    }
    if (picks(one) !== picks(other)) {
        const words = ` in the parts of ${names(one)} (${picks(one) || 'all'}; ${picks(other) || 'all'})`;
        return { words, fixes: like() };
    }
    if (turns(one) !== turns(other)) return { words: ' in their turn', fixes: like() };
    const [shapes, theirs] = [shapesOf(relief), shapesOf(pocket)];
    if (shapes !== theirs) return { words: ` in their shapes (${shapes || 'none'}; ${theirs || 'none'})`, fixes: [] };
    return { words: samePlaces(reliefLaser, pocketLaser) ? '' : ' in where their parts lie to each other', fixes: [] };
}

function artOf(half: LaserStep): ArtPlacement[] {
    return half.placements.flatMap((placement) => (placement.kind === 'art' ? [placement] : []));
}

function names(half: readonly ArtPlacement[]): string {
    return half.map((placement) => placement.art.value ?? '').join(', ');
}

function files({ recipe }: Plan, half: readonly ArtPlacement[]): string {
    return half.map(({ art }) => recipe.arts.find(({ name }) => name === art.value)?.uri ?? '').join(' ');
}

function picks(half: readonly ArtPlacement[]): string {
    return half
        .map(writtenPicks)
        .filter((text) => text !== '')
        .join(' ');
}

function turns(half: readonly ArtPlacement[]): string {
    return half.map((placement) => placement.turn?.value ?? 0).join(' ');
}

function shapesOf(half: LaserStep): string {
    return half.placements.flatMap((placement) => shapeWords(placement) ?? []).join(', ');
}

function shapeWords(placement: Placement): string | undefined {
    if (placement.kind === 'art') return undefined;
    const { outline } = placement;
    if (outline.kind === 'circle') return `circle ${showLength(outline.diameter.value)}`;
    return `rectangle ${showLength(outline.size.width.value)} x ${showLength(outline.size.height.value)}`;
}

/** Whether the placements of both halves lie alike to each other; where all of them lie on their blanks does not matter. */
function samePlaces(relief: LaserPlan, pocket: LaserPlan): boolean {
    const [one, other] = [relief.placed, pocket.placed];
    const [from, to] = [one[0]?.centre, other[0]?.centre];
    if (one.length !== other.length || from === undefined || to === undefined) return true; // told otherwise, or not known
    return one.every(({ centre }, index) => {
        const there = other[index]!.centre;
        return Math.hypot(centre.x - from.x - (there.x - to.x), centre.y - from.y - (there.y - to.y)) < near;
    });
}

function sameArt(mine: ArtPlacement, theirs: ArtPlacement): Change | undefined {
    return theirs.art.value === undefined ? undefined : { do: 'replace', where: mine.art.where, text: theirs.art.value };
}

/** What of its art a half takes, as it is written. */
function writtenPicks({ picks, leaves = [] }: ArtPlacement): string {
    const out =
        leaves.length === 0 ? '' : `${picks.length === 0 ? '' : ' '}but ${leaves.map(({ value }) => pickText(value)).join(', ')}`;
    return `${picks.map(({ value }) => pickText(value)).join(', ')}${out}`;
}

function samePicks(mine: ArtPlacement, theirs: ArtPlacement): Change {
    const wanted = writtenPicks(theirs);
    const first = end(mine.art.where);
    const last = mine.leaves?.at(-1) ?? mine.picks.at(-1);
    if (last === undefined) return { do: 'replace', where: first, text: ` ${wanted}` };
    const { uri, offset } = first;
    const where = { uri, offset, length: last.where.offset + last.where.length - offset };
    return wanted === '' ? { do: 'remove', where } : { do: 'replace', where, text: ` ${wanted}` };
}

function sameTurn(mine: ArtPlacement, theirs: ArtPlacement): Change | undefined {
    const unit = theirs.turn?.unit ?? 'deg';
    const text = `${showNumber(fromBase(theirs.turn?.value ?? 0, unit), 6)} ${unit}`;
    if (mine.turn !== undefined) return { do: 'replace', where: mine.turn.where, text };
    if (mine.repeat !== undefined && mine.places === undefined) return undefined; // it would have to stand in front of that
    return { do: 'replace', where: end(mine.where), text: ` turned ${text}` };
}

function end({ uri, offset, length }: Where): Where {
    return { uri, offset: offset + length, length: 0 };
}
