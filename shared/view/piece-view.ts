import { crossings, spanLength } from '../bench/section';
import { intersect } from '../geometry/boolean';
import { bounds } from '../geometry/measure';
import type { Region } from '../geometry/region';
import { type Column, hair, hollowFloor, isGone, layersAbove, seenLayer } from '../piece/column';
import { type Cell, type Face, isMasked } from '../piece/face';
import { firstLie, sideOf } from '../piece/lie';
import type { Memo } from '../plan/memo';
import type { BlankPlan, Plan } from '../plan/plan';
import type { LayerView, PieceView } from './bench-view';
import { coatTint, tinted } from './coat-look';
import { lookOf, toneOpacity } from './looks';
import type { PathTable } from './path-table';
import { inlayColour, sectionView } from './section-view';
import { unknownWood } from './unknown-wood';

/** One blank at one moment of the work, as layers of paths from the bare face up. */
export function pieceView(plan: Plan, face: Face, blank: BlankPlan, paths: PathTable, memo: Memo): PieceView {
    const left = leftOf(plan, face);
    const isCoated = (kind: 'seal' | 'finish'): boolean =>
        layersAbove(face.bare).some((layer) => layer.kind === 'coat' && plan.steps[layer.step ?? -1]?.step.kind === kind);
    const tint = coatTint(plan, face.bare);
    return {
        blank: face.blank,
        ...sideUp(plan, face),
        gone: face.inside !== undefined,
        masked: isMasked(face),
        sealed: isCoated('seal'),
        finished: isCoated('finish'),
        sanded: face.sanded,
        ...(tint === undefined ? {} : { tint: tinted('#ffffff', tint) }),
        ...(left === undefined ? {} : { outline: paths.idOf(left) }),
        layers: layersOf(plan, face, blank, paths, memo),
        section: sectionView(plan, face, blank, bestCut(plan, blank, memo)),
    };
}

/** Said of all moments of a blank that is turned over at some time. */
function sideUp({ recipe }: Plan, { blank, lie = firstLie }: Face): Pick<PieceView, 'side'> {
    const flips = recipe.steps.some((step) => step.kind === 'flip' && step.blank.value === blank);
    return flips ? { side: sideOf(lie) } : {};
}

/** What is left of a blank; undefined while it is whole, and where nothing is known of it. */
function leftOf(plan: Plan, { blank, body }: Face): Region | undefined {
    const first = plan.faces[0]?.find((face) => face.blank === blank)?.body.region;
    return body.region === first ? undefined : body.region;
}

function layersOf(plan: Plan, face: Face, blank: BlankPlan, paths: PathTable, memo: Memo): LayerView[] {
    const burnt = burntColourOf(blank);
    const made = (step: number): string => plan.steps[step]?.title ?? '';
    return [
        // Shadows of a deep place fall on what is beside it: the shallow first.
        ...face.cells
            .toSorted((a, b) => a.column.top.value - b.column.top.value)
            .flatMap((cell) => layersOfCell(plan, face, blank, cell, { paths, memo })),
        ...face.marks.map(({ step, region, through, level }): LayerView => {
            const look = through
                ? holeLook(face)
                : ({ kind: 'toned', colour: burnt, opacity: toneOpacity(markTone(plan, step)) } as const);
            return { ...look, path: paths.idOf(region), step, depth: level.value, label: 'marks' };
        }),
        ...face.kerfs.map(
            ({ step, region, width }): LayerView => ({
                path: paths.idOf(region),
                kind: 'cut',
                width,
                colour: burnt,
                opacity: 1,
                step,
                depth: blank.thickness?.value ?? 0,
                label: made(step),
            }),
        ),
    ];
}

function burntColourOf({ blank }: BlankPlan): string {
    return blank.sheet?.wood?.burnt ?? unknownWood.burnt;
}

/** The same for both the picture and where a hole shows what it is stuck to. */
function holeLook({ backed }: Face): Pick<LayerView, 'kind' | 'colour' | 'opacity'> {
    return { kind: 'through', colour: backed ? '#b8bcc2' : '#00000000', opacity: 1 };
}

function markTone(plan: Plan, step: number): number {
    return plan.steps[step]?.laser?.marks?.[0]?.tone ?? 1;
}

interface Drawing {
    readonly paths: PathTable;
    readonly memo: Memo;
}

/** What is seen of a cell: the burnt floor, and what lies on it. */
function layersOfCell(plan: Plan, face: Face, blank: BlankPlan, cell: Cell, drawing: Drawing): LayerView[] {
    const { column, region } = cell;
    const burnt = burntColourOf(blank);
    const dug = column.digs.findLast(({ depth }) => depth.value > hair)?.step;
    const depth = hollowFloor(column).value;
    const layer = (step: number, look: Pick<LayerView, 'kind' | 'colour' | 'opacity'>, label?: string): LayerView => ({
        ...look,
        path: drawing.paths.idOf(region),
        step,
        depth,
        label: label ?? plan.steps[step]?.title ?? '',
    });
    const open: LayerView[] = dug === undefined ? [] : [layer(dug, { kind: 'burnt', colour: burnt, opacity: 1 })];
    if (isGone(column)) return dug === undefined ? [] : [layer(dug, holeLook(face))];
    const under = [...open, ...tonesOf(plan, cell, burnt, drawing)];
    const content = contentOf(plan, face, blank, column);
    if (content === undefined) return under;
    const on = layer(dug ?? content.step, content, content.label);
    const { grain, metal } = content;
    const tint = metal ? undefined : coatTint(plan, column);
    const inlaid = {
        ...on,
        ...(grain === undefined ? {} : { grain }),
        ...(metal === undefined ? {} : { metal }),
        ...(tint === undefined ? {} : { tint: tinted('#ffffff', tint) }),
    };
    // What was burnt into a veneer or a fill lies on it.
    return dug !== undefined && dug > content.step ? [inlaid, ...under] : [...open, inlaid, ...under.slice(open.length)];
}

interface ContentLook extends Pick<LayerView, 'kind' | 'colour' | 'opacity' | 'label' | 'grain' | 'metal'> {
    readonly step: number;
}

/** What has been poured or laid in and is seen; undefined where the blank's own wood is. */
function contentOf(plan: Plan, face: Face, blank: BlankPlan, column: Column): ContentLook | undefined {
    const seen = seenLayer({ ...column, layers: column.layers.filter(({ kind }) => kind !== 'foil') });
    const made = plan.steps[seen?.step ?? -1];
    if (seen?.step === undefined || made === undefined) return undefined;
    const { step } = seen;
    if (seen.kind === 'resin') {
        const kind = column.top.value < face.level.value - hair ? 'spilled' : 'filled';
        // As deep as it lies over what is below it, which is in the colour.
        const colour = lookOf(plan, blank, column, column.layers.indexOf(seen)).colour;
        return { step, kind, colour, opacity: 1, label: seen.name, ...(seen.metal ? { metal: true as const } : {}) };
    }
    if (seen.kind !== 'wood' || made.inlay === undefined) return undefined;
    const from = made.inlay.reliefLaser.blank;
    const grain = plan.blanks.find((candidate) => candidate.name === from)?.blank.grain;
    return {
        step,
        kind: 'inlaid',
        colour: inlayColour(plan, from),
        opacity: 1,
        label: from,
        ...(grain === undefined ? {} : { grain }),
    };
}

/** Colour that lies on the surface of a cell: all over it, or the greys of a picture that was burnt as dots. */
function tonesOf(plan: Plan, { region, column }: Cell, burnt: string, { paths, memo }: Drawing): LayerView[] {
    const { tone: step } = column;
    const laser = plan.steps[step ?? -1]?.laser;
    if (step === undefined || laser === undefined) return [];
    const full = laser.tone === undefined ? 1 : toneOpacity(laser.tone);
    const kind = laser.tone === undefined ? 'burnt' : 'toned';
    const within = (part: Region, whole: Region): Region =>
        whole === region ? part : memo.get('within', `${memo.keyOf(part)} ${memo.keyOf(region)}`, () => intersect(part, region));
    const layer = (part: Region, opacity: number): LayerView[] =>
        part.rings.length === 0
            ? []
            : [
                  {
                      path: paths.idOf(part),
                      kind,
                      colour: burnt,
                      opacity,
                      step,
                      depth: column.top.value,
                      label: plan.steps[step]!.title,
                  },
              ];
    if (laser.pictures === undefined) return layer(region, full);
    return [
        ...(laser.whole === undefined || laser.tone === undefined ? [] : layer(within(laser.whole, laser.whole), full)),
        ...laser.pictures.flatMap(({ tones }) =>
            tones.flatMap((part, k) => layer(within(part, tones[0]!), layerOpacity(full, k + 1, tones.length))),
        ),
    ];
}

/** Opacity of the k-th of n nested layers, so that k of them together cover k/n of `full`. */
function layerOpacity(full: number, k: number, n: number): number {
    const before = 1 - (full * (k - 1)) / n;
    return before <= 0 ? 1 : 1 - (1 - (full * k) / n) / before;
}
/** The height at which a cut across the blank meets most of what was burnt, so that the section shows something. */
export function bestCut(plan: Plan, blank: BlankPlan, memo: Memo): number {
    const regions = plan.steps.flatMap(({ laser, step }) =>
        laser?.blank === blank.name && step.kind === 'engrave' ? [laser.region] : [],
    );
    const key = regions.map((region) => memo.keyOf(region)).join(' ');
    return memo.get('best-cut', key, () => {
        const boxes = regions.flatMap((region) => bounds(region) ?? []);
        if (boxes.length === 0) return (blank.size?.height ?? 0) / 2;
        const from = Math.min(...boxes.map((box) => box.minY));
        const to = Math.max(...boxes.map((box) => box.maxY));
        let best = { y: (from + to) / 2, length: 0 };
        for (let i = 1; i < 40; i++) {
            // Off the round number, where drawn edges like to lie.
            const y = from + ((to - from) * (i + 0.137)) / 40;
            const length = regions.reduce((sum, region) => sum + spanLength(crossings(region, y)), 0);
            if (length > best.length) best = { y, length };
        }
        return best.y;
    });
}
