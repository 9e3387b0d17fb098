import { crossings, inSpans, type Spans } from '../bench/section';
import { type Column, hair, type Layer, thicknessAt } from '../piece/column';
import type { Face, Kerf } from '../piece/face';
import type { BlankPlan, Plan } from '../plan/plan';
import type { Interval } from '../quantity/interval';
import { showLength } from '../quantity/show';
import type { SectionView, SpanView } from './bench-view';
import { unknownWood } from './unknown-wood';

/** Thickness with which a backing is drawn, mm: foil tape is about 0.07 mm (from memory). */
const backingThickness = 0.07;
/** Thickness with which each coat, and tape, is drawn, mm: the model gives them none. */
const coatThickness = 0.02;
const charThickness = 1e-3;

export const backingColour = '#b8bcc2';
export const glueColour = '#e8dfc8';
const coatColour = '#d8b468';
export const tapeColour = '#d9cfa6';

/** A cut across a piece at height `y` of its face, with every layer that lies there; heights count up from the blank's bottom. */
export function sectionView(plan: Plan, face: Face, blank: BlankPlan, y: number): SectionView {
    const width = blank.size?.width ?? 0;
    const top = blank.thickness?.value ?? 0;
    const cells = face.cells.flatMap(({ region, box, column }) =>
        box.minY <= y && y <= box.maxY ? [{ column, spans: crossings(region, y) }] : [],
    );
    const slots = face.kerfs.map((kerf) => kerfSpans(kerf, y));
    const body = crossings(face.body.region, y);
    const edges = new Set([0, width]);
    for (const spans of [body, ...slots, ...cells.map((cell) => cell.spans)]) {
        for (const x of spans) if (x > 0 && x < width) edges.add(x);
    }
    const xs = [...edges].sort((a, b) => a - b);
    const spans: SpanView[] = [];
    for (let i = 0; i + 1 < xs.length; i++) {
        const from = xs[i]!;
        const to = xs[i + 1]!;
        const middle = (from + to) / 2;
        const isThere = inSpans(body, middle);
        // What is cut away leaves the backing open, as long as that holds the parts.
        if (!isThere && !face.backed) continue;
        const parted = !isThere || slots.some((slot) => inSpans(slot, middle));
        const column = cells.find((cell) => inSpans(cell.spans, middle))?.column ?? face.bare;
        push(spans, spansOf(plan, face, blank, { from, to, top }, parted ? nothing : column));
    }
    return { y, width, top, face: Math.max(0, top - face.level.value), spans: spans.map(fine) };
}

const nothing: Pick<Column, 'layers'> = { layers: [] };

/** A cut takes away its line only, not what the line encloses. */
function kerfSpans({ region, width }: Kerf, y: number): Spans {
    const slots: number[] = [];
    for (const x of crossings(region, y)) {
        if (slots.length > 0 && x - width / 2 <= slots[slots.length - 1]!) slots.pop();
        else slots.push(x - width / 2);
        slots.push(x + width / 2);
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

interface Stretch {
    readonly from: number;
    readonly to: number;
    /** Height of the blank's first face. */
    readonly top: number;
}

/** What lies over one stretch, from the bottom up. */
function spansOf(plan: Plan, face: Face, blank: BlankPlan, place: Stretch, column: Column | typeof nothing): SpanView[] {
    const { from, to, top } = place;
    const list: SpanView[] = [];
    const add = (bottom: number, upTo: number, look: Pick<SpanView, 'kind' | 'colour' | 'label' | 'band'>) => {
        if (upTo > bottom) list.push({ from, to, bottom, top: upTo, ...look });
    };
    if (face.backed) add(-backingThickness, 0, { kind: 'foil', colour: backingColour, label: blank.blank.backing });
    if (!('top' in column)) return list;
    const { layers } = column;
    for (let index = layers.length - 1; index >= 0; index--) {
        const layer = layers[index]!;
        const look = lookOf(plan, blank, layer, thicknessAt(column, index).value);
        const upper = index === 0 ? column.top : layers[index - 1]!.down;
        const bottom = Math.max(0, top - layer.down.value);
        const isThin = layer.kind === 'coat' || layer.kind === 'tape' || layer.kind === 'foil';
        const thin = isThin ? Math.max(list[list.length - 1]?.top ?? bottom, bottom) : bottom;
        if (look === undefined) continue;
        if (isThin) add(thin, thin + (layer.kind === 'foil' ? backingThickness : coatThickness), look);
        else add(bottom, Math.max(0, top - upper.value), { ...look, ...bandOf(column, layer, upper, place, face) });
    }
    if (column.tone !== undefined) {
        const surface = Math.max(0, top - column.top.value);
        add(surface, surface + charThickness, { kind: 'char', colour: burntColour(blank), label: 'burnt' });
    }
    return list;
}

type Look = Pick<SpanView, 'kind' | 'colour' | 'label'>;

/** Undefined for a hollow. */
function lookOf(plan: Plan, blank: BlankPlan, { kind, name, step }: Layer, thickness: number): Look | undefined {
    const made = plan.steps[step ?? -1];
    switch (kind) {
        case 'wood': {
            if (step === undefined) {
                const wood = blank.blank.sheet?.wood;
                return { kind: 'wood', colour: wood?.colour ?? unknownWood.colour, label: wood?.name ?? blank.name };
            }
            const from = made?.inlay?.reliefLaser.blank ?? name;
            return { kind: 'inlay', colour: inlayColour(plan, from), label: from };
        }
        case 'resin':
            return { kind: 'resin', colour: resinOf(made?.step)?.colour ?? '#888888', label: name };
        case 'glue':
            return { kind: 'glue', colour: glueColour, label: `glue ${showLength(thickness)}` };
        case 'foil':
            return { kind: 'foil', colour: backingColour, label: `backing of ${name}` };
        case 'coat':
            return { kind: 'coat', colour: coatColour, label: name };
        case 'tape':
            return { kind: 'tape', colour: tapeColour, label: name };
        case 'air':
            return undefined;
    }
}

/** The resin that a step pours. */
export function resinOf(step: Plan['steps'][number]['step'] | undefined) {
    return step?.kind === 'fill' ? step.resin : undefined;
}

function burntColour({ blank }: BlankPlan): string {
    return blank.sheet?.wood?.burnt ?? '#4a2f1d';
}

/** Where the floor of what was dug may lie, within the wood that is there. */
function bandOf(column: Column, { step }: Layer, { low, high }: Interval, { top }: Stretch, face: Face): Pick<SpanView, 'band'> {
    if (step !== undefined || !column.digs.some(({ depth }) => depth.value > hair)) return {};
    const within = (height: number): number => Math.max(0, Math.min(top - face.level.value, height));
    const band = { low: within(top - high), high: within(top - low) };
    return band.high > band.low ? { band } : {};
}

export function inlayColour(plan: Plan, blank: string): string {
    return plan.blanks.find((candidate) => candidate.name === blank)?.blank.sheet?.wood?.colour ?? '#d8b98a';
}

/** Neighbours of the same stuff at the same height are one. */
function push(spans: SpanView[], column: readonly SpanView[]): void {
    for (const span of column) {
        const before = spans.findLast((candidate) => candidate.to === span.from && isAlike(candidate, span));
        if (before !== undefined) spans[spans.indexOf(before)] = { ...before, to: span.to };
        else spans.push(span);
    }
}

function isAlike(a: SpanView, b: SpanView): boolean {
    return a.kind === b.kind && a.bottom === b.bottom && a.top === b.top && a.label === b.label;
}
