import { add, exactly, type Interval, subtract } from '../quantity/interval';

/** What a layer can be of: the wood of a board or veneer, or anything that a step lays on it. */
export type LayerKind = 'wood' | 'glue' | 'resin' | 'coat' | 'tape' | 'foil' | 'air';

/** One layer of a column. */
export interface Layer {
    readonly kind: LayerKind;
    /** Name of the stock, or of the blank for foil. */
    readonly name: string;
    /** Depth of its lower side below the face that is up, as it was before any work, mm. Two layers of one board share that face, so that no spread is counted twice. */
    readonly down: Interval;
    /** The step that laid it; absent for the blank's own wood. */
    readonly step?: number;
    /** Metal powder is in it. */
    readonly metal?: true;
}

/** A burn that took the surface down in this place. */
export interface Dig {
    readonly step: number;
    /** How far it took it down here, mm: less than elsewhere where something in the way has no law. */
    readonly depth: Interval;
}

/** What lies in one place, from the top down. Lengths mm below the face that is up, as it was before any work. */
export interface Column {
    /** Top of what is there: negative where it stands proud. */
    readonly top: Interval;
    /** From the top down; none where the place is gone. */
    readonly layers: readonly Layer[];
    /** Burns whose floor or wall is still there, oldest first. */
    readonly digs: readonly Dig[];
    /** The latest burn that only coloured the surface, while that colour is there. */
    readonly tone?: number;
    /** The surface that it was burnt into, which sandings may have come below since. */
    readonly tonedAt?: number;
    /** Burns and colour of the other face, where the blank has been turned over. */
    readonly below?: Burns;
}

/** What burns have left on one face. */
export type Burns = Pick<Column, 'digs' | 'tone' | 'tonedAt'>;

/** Closer than this two heights are one, mm. */
export const hair = 1e-9;

/** How deep a mere colour reaches, mm. @commonPractice */
export const scorchDepth = 0.08;

/** The untouched blank. Without a thickness there is no bottom. */
export function bareColumn(sheet: string, thickness: Interval | undefined): Column {
    const down = thickness ?? exactly(Number.POSITIVE_INFINITY);
    return { top: exactly(0), layers: [{ kind: 'wood', name: sheet, down }], digs: [] };
}

export function isGone(column: Column): boolean {
    return column.layers.length === 0;
}

/** Thickness of the layer at an index, worst case, mm. */
export function thicknessAt({ top, layers }: Column, index: number): Interval {
    const upper = index === 0 ? top : layers[index - 1]!.down;
    return subtract(layers[index]!.down, upper);
}

/** The wood of the blank itself that is left in this place, mm; undefined where nothing is left of it or its thickness is not known. */
export function floorOf(column: Column): Interval | undefined {
    const at = ownLayer(column);
    return at < 0 || !Number.isFinite(column.layers[at]!.down.value) ? undefined : thicknessAt(column, at);
}

/** Index of the blank's own wood; -1 where nothing is left of it. Below it lies only what was laid on its other face. */
export function ownLayer({ layers }: Pick<Column, 'layers'>): number {
    return layers.findLastIndex(({ kind, step }) => kind === 'wood' && step === undefined);
}

/** What lies on the blank's own wood, on the face that is up; all that is there where none of it is left. */
export function layersAbove({ layers }: Pick<Column, 'layers'>): readonly Layer[] {
    const own = ownLayer({ layers });
    return own < 0 ? layers : layers.slice(0, own);
}

/** The layer that is seen from above, under coats, tape and hollows. */
export function seenLayer({ layers }: Column): Layer | undefined {
    return layers.find(({ kind }) => kind !== 'coat' && kind !== 'tape' && kind !== 'air');
}

/** What was dug out here, below all that has been poured in since; mm below the blank's first face. */
export function hollowFloor({ top, layers }: Column): Interval {
    let floor = top;
    for (const { kind, down } of layers) {
        if (kind === 'wood' || kind === 'foil' || kind === 'glue') break;
        floor = down;
    }
    return floor;
}

/** Whether a burn has opened this place and nothing has been put into it since. */
export function isOpenPocket({ layers, digs }: Column): boolean {
    const top = layers.find(({ kind }) => kind !== 'coat');
    return digs.some(({ depth }) => depth.value > hair) && top?.kind === 'wood' && top.step === undefined;
}

/** A text that is equal for equal columns. */
export function columnKey({ top, layers, below, ...seen }: Column): string {
    return JSON.stringify([
        ends(top),
        layers.map(({ kind, name, down, step, metal }) => [kind, name, ends(down), step ?? -1, metal ?? false]),
        ...burnsOf(seen),
        ...(below === undefined ? [] : burnsOf(below)),
    ]);
}

function ends({ value, low, high }: Interval): number[] {
    return [value, low, high];
}

function burnsOf({ digs, tone, tonedAt }: Burns): unknown[] {
    return [digs.map(({ step, depth }) => [step, ends(depth)]), tone ?? -1, tonedAt ?? 0];
}

/** What the beam does in one place. */
export interface Burn {
    readonly step: number;
    /** Depth that the whole burn takes off each wood by its own law, by the name of its sheet, mm. */
    readonly depths: Readonly<Record<string, Interval>>;
    /** It goes through all that has a law, whatever the depths say. */
    readonly through: boolean;
    /** It only colours. */
    readonly toneOnly: boolean;
    /** Foil holds this beam up. */
    readonly foilStops: boolean;
}

/**
 * Takes off layer by layer what the burn's energy is worth: a layer that is a part of what the burn takes off in its wood uses
 * that part up. Tape, coats and hollows cost nothing; a film of glue burns as the wood above it does. Resin and
 * foil have no law: they hold the beam up.
 * @commonPractice What a film of glue costs.
 * @returns the column afterwards and the layers that the beam touched which are not wood
 */
export function burnColumn(column: Column, burn: Burn): { readonly column: Column; readonly met: readonly Layer[] } {
    if (isGone(column)) return { column, met: [] };
    if (burn.toneOnly) return toned(column, burn);
    const met: Layer[] = [];
    const { layers } = column;
    let top = column.top;
    // Where the burn begins to dig: below tape, hollows and coats.
    let start = top;
    let left = 1;
    let index = 0;
    let wood = depthOfFirstWood(layers, burn);
    for (; index < layers.length; index++) {
        const layer = layers[index]!;
        if (layer.kind === 'coat' || layer.kind === 'glue' || stops(layer, burn)) met.push(layer);
        if (stops(layer, burn)) break;
        if (isFree(layer)) {
            if (top === start) start = layer.down;
            top = layer.down;
            continue;
        }
        if (layer.kind === 'wood') wood = burn.depths[layer.name] ?? wood;
        if (burn.through || layer.kind === 'foil') {
            top = layer.down;
            continue;
        }
        if (wood === undefined || !(wood.value > 0)) break;
        const thickness = layer.down.value - top.value;
        if (left * wood.value < thickness - hair) {
            top = add(top, { value: left * wood.value, low: left * wood.low, high: left * wood.high });
            break;
        }
        left -= thickness / wood.value;
        top = layer.down;
        if (left <= hair) {
            index++;
            break;
        }
    }
    const depth = subtractSpread(top, start);
    return {
        column: {
            top,
            layers: layers.slice(index),
            digs: depth.value > hair ? [...column.digs, { step: burn.step, depth }] : column.digs,
            ...belowOf(column),
        },
        met,
    };
}

function belowOf({ below }: Column): Pick<Column, 'below'> {
    return below === undefined ? {} : { below };
}

function stops({ kind }: Layer, { foilStops }: Burn): boolean {
    return kind === 'resin' || (kind === 'foil' && foilStops);
}

/** What costs the burn nothing, and it begins to dig below. */
function isFree({ kind }: Layer): boolean {
    return kind === 'air' || kind === 'tape' || kind === 'coat';
}

/** A burn that only colours goes through tape, and no further than the surface below it. */
function toned(column: Column, { step }: Burn): { column: Column; met: readonly Layer[] } {
    const open = peelColumn(column, ({ kind }) => kind === 'tape');
    const [first] = open.layers;
    return {
        column: { ...open, tone: step, tonedAt: open.top.value },
        met: first === undefined || first.kind === 'wood' ? [] : [first],
    };
}

function depthOfFirstWood(layers: readonly Layer[], burn: Burn): Interval | undefined {
    const first = layers.find(({ kind }) => kind === 'wood');
    return first === undefined ? undefined : burn.depths[first.name];
}

/** How far a surface went down: what is uncertain of the surface before is in both heights and cancels out. */
function subtractSpread(after: Interval, before: Interval): Interval {
    const value = after.value - before.value;
    return {
        value,
        low: Math.max(0, Math.min(value, after.low - before.low)),
        high: Math.max(value, after.high - before.high),
    };
}

/** Lays something on top. */
export function layOn(column: Column, layer: Omit<Layer, 'down'>, thickness: Interval): Column {
    if (isGone(column)) return column;
    const { tone: _tone, tonedAt: _tonedAt, ...covered } = column;
    const kept = layer.kind === 'coat' ? column : covered;
    return { ...kept, top: subtract(column.top, thickness), layers: [{ ...layer, down: column.top }, ...column.layers] };
}

/** The layer at an index with a hollow in its lower side, `deep` mm; without it and what lies on it where that goes all through. */
export function hollowedFromBelow(column: Column, index: number, deep: number): Column {
    const { down, step, ...layer } = column.layers[index]!;
    if (deep > thicknessAt(column, index).value - hair) return { ...column, top: down, layers: column.layers.slice(index + 1) };
    const by = step === undefined ? {} : { step };
    const thinner: Layer = { ...layer, ...by, down: subtract(down, exactly(deep)) };
    return { ...column, layers: column.layers.toSpliced(index, 1, thinner, { kind: 'air', name: 'hollow', down, ...by }) };
}

/** Sands down to a plane: what lies above it goes, with coats and colour that lie in it; what was dug above it is no more. */
export function sandColumn(column: Column, plane: Interval): Column {
    if (isGone(column) || column.top.value > plane.value + hair) return column;
    const layers = column.layers.filter(({ down }) => down.value > plane.value + hair);
    const rest = { digs: column.digs, ...belowOf(column) };
    if (layers.length === 0) return { top: column.top, layers, ...rest };
    if (layers[0]!.kind === 'air') return { top: layers[0]!.down, layers: layers.slice(1), ...rest };
    const laidBy = layers[0]!.step ?? (ownLayer({ layers }) === 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
    const { tone, tonedAt = 0 } = column;
    const coloured = tone === undefined || plane.value - tonedAt >= scorchDepth - hair ? {} : { tone, tonedAt };
    // What was dug into the layer that is level now is no more.
    return { ...belowOf(column), top: plane, layers, digs: column.digs.filter(({ step }) => step < laidBy), ...coloured };
}

/** Lays tape across the face: over a pocket it bridges a hollow. */
export function maskColumn(column: Column, face: Interval, step: number): Column {
    if (isGone(column)) return column;
    const tape: Layer = { kind: 'tape', name: 'tape', down: column.top, step };
    if (column.top.value <= face.value + hair) return { ...column, layers: [tape, ...column.layers] };
    const hollow: Layer = { kind: 'air', name: 'hollow', down: column.top, step };
    return { ...column, top: face, layers: [{ ...tape, down: face }, hollow, ...column.layers] };
}

/** Takes off what lies on top of the kinds given, with coats on it and the hollow beneath it. What is covered by something else stays. */
export function peelColumn(column: Column, peels: (layer: Layer) => boolean): Column {
    let { top, layers } = column;
    for (;;) {
        const under = layers.findIndex(({ kind }) => kind !== 'coat');
        const next = layers[under];
        if (next === undefined || !(peels(next) || (under === 0 && next.kind === 'air'))) break;
        top = next.down;
        layers = layers.slice(under + 1);
    }
    return layers === column.layers ? column : { ...column, top, layers };
}
