import { crossings, inSpans, type Spans } from '../bench/section';
import type { Region } from '../geometry/region';
import type { Mark, Piece } from '../plan/piece';
import type { BlankPlan, Plan } from '../plan/plan';
import { showLength } from '../quantity/show';
import type { SectionView, SpanView } from './bench-view';

/** Thickness with which a backing is drawn, mm: foil tape is about 0.07 mm (from memory). */
const backingThickness = 0.07;

/** Width with which a cut is drawn at the least, mm: about that of a focused beam. */
const thinnestKerf = 0.1;

/**
 * A cut across a piece at height `y` of its face; heights count up from the blank's bottom.
 * @param left what is left of the blank, where that is not all of it
 */
export function sectionView(plan: Plan, piece: Piece, blank: BlankPlan, y: number, left?: Region): SectionView {
    const width = blank.size?.width ?? 0;
    const top = blank.thickness?.value ?? 0;
    const face = Math.max(0, top - piece.face.value);
    const cuts = piece.marks.map((mark) => ({ mark, spans: markSpans(plan, mark, y), inlay: inlaySpans(mark, y) }));
    const body = left === undefined ? undefined : crossings(left, y);
    const edges = new Set([0, width, ...(body ?? [])]);
    for (const { spans, inlay } of cuts) {
        for (const x of [...spans, ...inlay]) if (x > 0 && x < width) edges.add(x);
    }
    const xs = [...edges].sort((a, b) => a - b);
    const spans: SpanView[] = [];
    for (let i = 0; i + 1 < xs.length; i++) {
        const from = xs[i]!;
        const to = xs[i + 1]!;
        const middle = (from + to) / 2;
        if (body !== undefined && !inSpans(body, middle)) continue;
        const last = cuts.findLast((cut) => inSpans(cut.spans, middle));
        push(
            spans,
            column(plan, piece, blank, { from, to, top, face }, last?.mark, last !== undefined && inSpans(last.inlay, middle)),
        );
    }
    return { y, width, top, face, spans: spans.map(fine) };
}

/** A cut takes away its line only, not what the line encloses. */
function markSpans(plan: Plan, mark: Mark, y: number): Spans {
    const spans = crossings(mark.region, y);
    if (mark.kind !== 'cut') return spans;
    const half = Math.max(plan.steps[mark.step]?.laser?.growth ?? 0, thinnestKerf / 2);
    const slots: number[] = [];
    for (const x of spans) {
        if (slots.length > 0 && x - half <= slots[slots.length - 1]!) slots.pop();
        else slots.push(x - half);
        slots.push(x + half);
    }
    return slots;
}

/** Tenths of a micron: finer than any drawing shows, and short to write. */
const perMm = 1e4;

function fine({ from, to, bottom, top, band, ...span }: SpanView): SpanView {
    const tidy = (mm: number): number => Math.round(mm * perMm) / perMm;
    const bare = { ...span, from: tidy(from), to: tidy(to), bottom: tidy(bottom), top: tidy(top) };
    return band === undefined ? bare : { ...bare, band: { low: tidy(band.low), high: tidy(band.high) } };
}

interface Place {
    readonly from: number;
    readonly to: number;
    readonly top: number;
    readonly face: number;
}

/** What lies over one stretch, from the bottom up. */
function column(plan: Plan, piece: Piece, blank: BlankPlan, place: Place, mark: Mark | undefined, inlaid: boolean): SpanView[] {
    const { from, to, top, face } = place;
    const wood = blank.blank.sheet?.wood;
    const colour = wood?.colour ?? '#c9a26b';
    const list: SpanView[] = [];
    const add = (kind: SpanView['kind'], bottom: number, upTo: number, paint: string, label: string, band?: SpanView['band']) => {
        if (upTo > bottom) list.push({ from, to, bottom, top: upTo, kind, colour: paint, label, ...(band && { band }) });
    };
    if (blank.blank.backing !== 'none' && !piece.peeled) add('foil', -backingThickness, 0, '#b8bcc2', blank.blank.backing);
    const open = mark?.kind === 'through' || mark?.kind === 'cut';
    const floor =
        mark === undefined || mark.kind === 'toned' ? face : open ? 0 : Math.max(0, Math.min(face, top - mark.depth.value));
    add('wood', 0, floor, colour, wood?.name ?? blank.name, bandOf(mark, top, face));
    if (mark === undefined) return list;
    if (mark.kind === 'toned') {
        add('char', floor, floor + 1e-3, wood?.burnt ?? '#4a2f1d', 'burnt');
        return list;
    }
    const { content } = mark;
    if (content?.kind === 'resin') add('resin', floor, Math.max(floor, face + content.proud), content.colour, content.name);
    if (content?.kind === 'inlay' && inlaid) {
        const seat = Math.min(floor + content.film, face);
        add('glue', floor, seat, '#e8dfc8', `glue ${showLength(content.film)}`);
        const raised = Math.max(seat, content.proud > 0 ? top + content.proud : Math.min(face, seat + content.veneer));
        add('inlay', seat, raised, inlayColour(plan, content.from), content.from);
    }
    return list;
}

/** Where the floor of what was dug may lie, within the wood that is there. */
function bandOf(mark: Mark | undefined, top: number, face: number): SpanView['band'] {
    if (mark === undefined || mark.kind !== 'pocket') return undefined;
    const { low, high } = mark.depth;
    const within = (height: number): number => Math.max(0, Math.min(face, height));
    const band = { low: within(top - high), high: within(top - low) };
    return band.high > band.low ? band : undefined;
}

function inlaySpans(mark: Mark, y: number): Spans {
    return mark.content?.kind === 'inlay' ? crossings(mark.content.region, y) : [];
}

export function inlayColour(plan: Plan, blank: string): string {
    return plan.blanks.find((candidate) => candidate.name === blank)?.blank.sheet?.wood?.colour ?? '#d8b98a';
}

/** Neighbours of the same stuff at the same height are one. */
function push(spans: SpanView[], column: readonly SpanView[]): void {
    for (const span of column) {
        const before = spans.findLast((candidate) => candidate.to === span.from && candidate.kind === span.kind);
        if (before !== undefined && before.bottom === span.bottom && before.top === span.top && before.label === span.label) {
            spans[spans.indexOf(before)] = { ...before, to: span.to };
        } else {
            spans.push(span);
        }
    }
}
