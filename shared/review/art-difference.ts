import type { Art } from '../art/art';
import { intersect, subtract } from '../geometry/boolean';
import { area } from '../geometry/measure';
import { emptyRegion, type Region } from '../geometry/region';
import { translate } from '../geometry/transform';
import type { Memo } from '../plan/memo';
import { paintOf } from '../plan/paint-of';
import type { ArtState, Plan } from '../plan/plan';
import { showRatio } from '../quantity/show';
import type { ArtSource } from '../recipe/recipe';
import { changesOf } from './change';
import { type Figure, word, worked } from './figure';
import { wordLikeness } from './likeness';
import type { ArtReview } from './review';

/** How one piece of art differs: its review, and the regions themselves in mm of the later version's page. */
export interface ArtDifference {
    readonly review: ArtReview;
    readonly page: { readonly width: number; readonly height: number };
    readonly gained: Region;
    readonly lost: Region;
    readonly kept: Region;
}

/** Art that differs, by name; what was renamed is found by its file. */
export function artDifferences(before: Plan, after: Plan, memo: Memo): ArtDifference[] {
    return pairs(before.recipe.arts, after.recipe.arts).flatMap(([old, now]) => {
        const difference = compare(sideOf(old, before, memo), sideOf(now, after, memo), (now ?? old)!.name, memo);
        return difference === undefined ? [] : [difference];
    });
}

type Pair = readonly [ArtSource | undefined, ArtSource | undefined];

function pairs(before: readonly ArtSource[], after: readonly ArtSource[]): Pair[] {
    const left = new Map(before.map((art) => [art.name, art]));
    const found: Pair[] = [];
    const fresh: ArtSource[] = [];
    for (const now of after) {
        const old = left.get(now.name);
        if (old === undefined) fresh.push(now);
        else found.push([old, now]);
        left.delete(now.name);
    }
    const alike = fresh.flatMap((now) =>
        [...left.values()].map((old) => ({ old, now, value: wordLikeness(old.path.value, now.path.value) })),
    );
    // By name where two are as alike, in an order that is the same from either side.
    alike.sort((a, b) => b.value - a.value || (bothNames(a) < bothNames(b) ? -1 : 1));
    const matched = new Set<ArtSource>();
    for (const { old, now, value } of alike) {
        if (value <= renamedFrom || matched.has(now) || !left.delete(old.name)) continue;
        matched.add(now);
        found.push([old, now]);
    }
    for (const now of fresh) if (!matched.has(now)) found.push([undefined, now]);
    return [...found, ...[...left.values()].map((old): Pair => [old, undefined])];
}

/** Paths that agree in this part of their letters are one file under a new name. */
const renamedFrom = 0.8;

function bothNames({ old, now }: { readonly old: ArtSource; readonly now: ArtSource }): string {
    return [old.name, now.name].sort().join(' ');
}

interface Side {
    readonly figures: readonly Figure[];
    readonly paint: Region;
    readonly page: { readonly width: number; readonly height: number };
    readonly art?: Art;
}

function sideOf(source: ArtSource | undefined, plan: Plan, memo: Memo): Side | undefined {
    if (source === undefined) return undefined;
    const state = plan.arts.get(source.name);
    const figures = artFigures(source, state);
    if (state?.kind !== 'art') return { figures, paint: emptyRegion, page: { width: 0, height: 0 } };
    const { art } = state;
    return { figures, paint: paintOf(art, source, [], memo), page: art.page, art };
}

/** What is written of a piece of art, and what became of its file. */
export function artFigures({ path, threshold, dither, curve }: ArtSource, state: ArtState | undefined): Figure[] {
    return [
        word('file', path.value),
        ...(threshold === undefined ? [] : [worked('burns from', threshold.value, 'ratio')]),
        ...(dither === undefined ? [] : [word('dither', dither.value)]),
        ...(curve === undefined
            ? []
            : [word('curve', curve.value.map(({ from, to }) => `${showRatio(from)} gives ${showRatio(to)}`).join(', '))]),
        ...(state?.kind === 'art'
            ? [worked('page width', state.art.page.width, 'length'), worked('page height', state.art.page.height, 'length')]
            : [word('state', state?.kind ?? 'not read')]),
    ];
}

function compare(old: Side | undefined, now: Side | undefined, name: string, memo: Memo): ArtDifference | undefined {
    const changes = changesOf(old?.figures ?? [], now?.figures ?? []);
    const page = now === undefined || now.paint.rings.length === 0 ? (old ?? now)!.page : now.page;
    const regions = difference(old, now, memo);
    const status = old === undefined ? 'added' : now === undefined ? 'removed' : 'changed';
    const areas = { gained: area(regions.gained), lost: area(regions.lost), kept: area(regions.kept) };
    if (status === 'changed' && changes.length === 0 && areas.gained + areas.lost < leastArea) return undefined;
    const parts = { gained: missingIn(old?.art, now?.art), lost: missingIn(now?.art, old?.art) };
    const named = status === 'changed' && parts.gained.length + parts.lost.length > 0 ? { parts } : {};
    return { review: { name, status, changes, ...areas, ...named }, page, ...regions };
}

/** The named parts of `other` that `art` has not; of a group that is missing as a whole only the group. */
function missingIn(art: Art | undefined, other: Art | undefined): string[] {
    const here = new Set(art?.parts.flatMap(({ ids }) => ids));
    return [...new Set(other?.parts.flatMap(({ ids }) => ids.filter((id) => !here.has(id)).slice(-1)))].map((id) => `#${id}`);
}

/** Less than this is rounding of the grid and no change of the drawing, mm2. */
const leastArea = 0.01;

function difference(old: Side | undefined, now: Side | undefined, memo: Memo): Pick<ArtDifference, 'gained' | 'lost' | 'kept'> {
    const was = old?.paint ?? emptyRegion;
    const is = now?.paint ?? emptyRegion;
    if (was === is) return { gained: emptyRegion, lost: emptyRegion, kept: is };
    // Art is placed by the middle of its page, so that is where two sizes of it are laid on each other.
    const dx = old === undefined || now === undefined ? 0 : (now.page.width - old.page.width) / 2;
    const dy = old === undefined || now === undefined ? 0 : (now.page.height - old.page.height) / 2;
    return memo.get('art-difference', `${memo.keyOf(was)} ${memo.keyOf(is)} ${dx} ${dy}`, () => {
        const moved = dx === 0 && dy === 0 ? was : translate(was, dx, dy);
        return { gained: subtract(is, moved), lost: subtract(moved, is), kept: intersect(is, moved) };
    });
}
