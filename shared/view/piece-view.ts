import { crossings, spanLength } from '../bench/section';
import { bounds } from '../geometry/measure';
import type { Region } from '../geometry/region';
import type { Memo } from '../plan/memo';
import type { Mark, Piece } from '../plan/piece';
import type { BlankPlan, Plan } from '../plan/plan';
import type { LayerView, PieceView } from './bench-view';
import type { PathTable } from './path-table';
import { inlayColour, sectionView } from './section-view';

/** One blank at one moment of the work, as layers of paths from the bare face up. */
export function pieceView(plan: Plan, piece: Piece, blank: BlankPlan, frame: number, paths: PathTable, memo: Memo): PieceView {
    const left = leftOf(plan, frame, blank.name);
    const layers = piece.marks.flatMap((mark) => layersOf(plan, piece, blank, mark, paths));
    return {
        blank: piece.blank,
        gone: piece.inside !== undefined,
        masked: piece.masked,
        sealed: piece.sealed > 0,
        finished: piece.finished > 0,
        sanded: piece.sanded,
        ...(left === undefined ? {} : { outline: paths.idOf(left) }),
        layers,
        section: sectionView(plan, piece, blank, bestCut(plan, blank, memo), left),
    };
}

/** What is left of a blank at a moment; undefined while it is whole, and where nothing is known of it. */
export function leftOf(plan: Plan, frame: number, blank: string): Region | undefined {
    const [first, now] = [plan.faces[0], plan.faces[frame]].map(
        (faces) => faces?.find((face) => face.blank === blank)?.body.region,
    );
    return now === first ? undefined : now;
}

function layersOf(plan: Plan, piece: Piece, blank: BlankPlan, mark: Mark, paths: PathTable): LayerView[] {
    const burnt = blank.blank.sheet?.wood?.burnt ?? '#4a2f1d';
    const path = paths.idOf(mark.region);
    const depth = mark.depth.value;
    const made = mark.registration === true ? 'marks' : (plan.steps[mark.step]?.title ?? '');
    const layer = (kind: LayerView['kind'], colour: string, opacity: number, label = made, of = path): LayerView => ({
        path: of,
        kind,
        colour,
        opacity,
        step: mark.step,
        depth,
        label,
    });
    const { tones } = mark;
    if (tones !== undefined) {
        const full = mark.kind === 'toned' ? toneOpacity(mark.tone) : 1;
        const kind = mark.kind === 'pocket' ? 'burnt' : mark.kind;
        return tones.flatMap((region, k) =>
            region.rings.length === 0
                ? []
                : [layer(kind, burnt, layerOpacity(full, k + 1, tones.length), made, paths.idOf(region))],
        );
    }
    switch (mark.kind) {
        case 'toned':
            return [layer('toned', burnt, toneOpacity(mark.tone))];
        case 'cut':
            return [layer('cut', burnt, 1)];
        case 'through':
            return [layer('through', blank.blank.backing === 'none' || piece.peeled ? '#00000000' : '#b8bcc2', 1)];
        case 'pocket':
            return [layer('burnt', burnt, 1), ...contentLayers(plan, mark, layer, paths)];
    }
}

function toneOpacity(tone: number): number {
    return 0.25 + 0.75 * Math.min(1, tone);
}

/** Opacity of the k-th of n nested layers, so that k of them together cover k/n of `full`. */
function layerOpacity(full: number, k: number, n: number): number {
    const before = 1 - (full * (k - 1)) / n;
    return before <= 0 ? 1 : 1 - (1 - (full * k) / n) / before;
}

type MakeLayer = (kind: LayerView['kind'], colour: string, opacity: number, label?: string, of?: string) => LayerView;

function contentLayers(plan: Plan, mark: Mark, layer: MakeLayer, paths: PathTable): LayerView[] {
    const { content } = mark;
    if (content === undefined) return [];
    if (content.kind === 'resin') {
        return [layer(content.proud > 0 ? 'spilled' : 'filled', content.colour, content.opacity, content.name)];
    }
    const grain = plan.blanks.find((candidate) => candidate.name === content.from)?.blank.grain;
    const inlaid = layer('inlaid', inlayColour(plan, content.from), 1, content.from, paths.idOf(content.region));
    return [grain === undefined ? inlaid : { ...inlaid, grain }];
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
