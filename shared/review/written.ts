import { fromBase, type Quantity } from '../quantity/quantity';
import type { Where, Written } from '../quantity/where';
import { pickText } from '../recipe/pick-text';
import type { Placement } from '../recipe/step';
import type { Extent } from '../recipe/stock';
import type { Amount, Figure } from './figure';

/** Written data told in words: `text` in the maker's units, `key` in base units, so that 1/2 in and 12.7 mm are the same. */
export interface Told {
    readonly text: string;
    readonly key: string;
    readonly amount?: Amount;
}

/** Where something stands and which of its kind it is says nothing about the piece. */
const notWritten = /^(?:index|kind|name|allows|followed|whole|where|usualMix|\w+Where)$/;

/**
 * Every line that is written in a block of a recipe or of the stock, as figures, whatever the block
 * is: one that is added to the language tomorrow is compared without a word here.
 */
export function writtenFigures(block: object): Figure[] {
    const figures: Figure[] = [];
    for (const [key, value] of Object.entries(block)) {
        if (notWritten.test(key)) continue;
        if (key === 'placements') {
            for (const placement of value as readonly Placement[])
                figures.push({ label: placement.kind, ...toldPlacement(placement) });
            continue;
        }
        const told = tell(value);
        if (told !== undefined) figures.push({ label: words(key), ...told });
    }
    return figures;
}

/** Where each line of such a block was written, by the label that it has among changes. */
export function writtenPlaces(block: object): Readonly<Record<string, Where>> {
    const places: Record<string, Where> = {};
    const count = new Map<string, number>();
    const add = (label: string, value: unknown): void => {
        const nth = (count.get(label) ?? 0) + 1;
        count.set(label, nth);
        const where = placeOf(value);
        if (where !== undefined) places[nth === 1 ? label : `${label} (${nth})`] = where;
    };
    for (const [key, value] of Object.entries(block)) {
        if (notWritten.test(key)) continue;
        if (key === 'placements') for (const placement of value as readonly Placement[]) add(placement.kind, placement);
        else if (tell(value) !== undefined) add(words(key), value);
    }
    return places;
}

function placeOf(value: unknown): Where | undefined {
    if (Array.isArray(value)) return placeOf(value[0]);
    if (isWhere(value)) return value;
    if (typeof value !== 'object' || value === null || !('where' in value)) return undefined;
    return isWhere(value.where) ? value.where : undefined;
}

/** Undefined for what says nothing: an empty list, an unwritten flag. */
export function tell(value: unknown): Told | undefined {
    if (value === undefined || value === null || value === false) return undefined;
    if (value === true) return plain('yes');
    if (typeof value === 'number') return { ...plain(exact(value)), amount: { value, dimension: 'count', unit: '' } };
    if (typeof value !== 'object') return plain(String(value));
    if (Array.isArray(value)) return toldList(value);
    if (isQuantity(value)) return toldQuantity(value);
    if (isExtent(value)) return toldExtent(value);
    if (isWhere(value)) return plain('yes');
    if ('through' in value) return toldThrough(value);
    if ('name' in value && 'where' in value) return plain(String(value.name));
    if ('where' in value && Object.keys(value).every((key) => key === 'where' || key === 'value')) {
        return 'value' in value ? tell(value.value) : plain('…');
    }
    if ('paid' in value && 'amount' in value) return toldPrice(value.paid, value.amount);
    return join(Object.entries(value).flatMap(([key, part]) => toldPart(key, part)));
}

/** One part of a line: a flag is its name, a plain word speaks for itself, a number wants its name before it. */
function toldPart(key: string, part: unknown): Told[] {
    if (key === 'where' || key === 'whole') return [];
    if (part === true) return [plain(words(key))];
    const told = tell(part);
    if (told === undefined) return [];
    return typeof part === 'string' ? [told] : [plain(words(key)), told];
}

function toldList(list: readonly unknown[]): Told | undefined {
    if (list.length === 0) return undefined;
    if (list.every(isWhere)) return plain(list.length === 1 ? 'yes' : `${list.length} times`);
    return join(
        list.flatMap((each) => tell(each) ?? []),
        ', ',
    );
}

/** "34 for 1 sheet". */
function toldPrice(paid: unknown, amount: unknown): Told {
    return join(
        [paid, amount].flatMap((each) => tell(each) ?? []),
        ' for ',
    );
}

function toldThrough(value: object): Told {
    const sure = 'sure' in value ? tell(value.sure) : undefined;
    return sure === undefined ? plain('through') : join([plain('through sure'), sure]);
}

function toldQuantity({ value, tolerance, unit, dimension }: Quantity): Told {
    const written = exact(fromBase(value, unit));
    const half = tolerance > 0 ? ` ± ${exact(fromBase(value + tolerance, unit) - fromBase(value, unit))}` : '';
    return {
        text: `${written}${half}${unit === '' ? '' : ` ${unit}`}`,
        key: `${dimension} ${value.toPrecision(9)} ${tolerance.toPrecision(6)}`,
        amount: { value, dimension, unit, ...(tolerance > 0 && { low: value - tolerance, high: value + tolerance }) },
    };
}

function toldExtent({ width, height }: Extent): Told {
    const across = toldQuantity(width);
    const along = toldQuantity(height);
    const text =
        width.unit === height.unit
            ? `${exact(fromBase(width.value, width.unit))} x ${along.text}`
            : `${across.text} x ${along.text}`;
    return { text, key: `${across.key} x ${along.key}` };
}

function toldPlacement(placement: Placement): Told {
    const parts: Told[] = [];
    const add = (lead: string, value: unknown): void => {
        const told = tell(value);
        if (told !== undefined) parts.push(...(lead === '' ? [] : [plain(lead)]), told);
    };
    if (placement.kind === 'art') {
        add('', placement.art);
        add('', picked(placement.picks));
        add('but', picked(placement.leaves));
        add('inverse within', placement.inverse);
    } else add('', placement.outline);
    const points = placement.places?.points ?? [];
    for (const [index, { x, y }] of points.entries())
        parts.push(plain(index === 0 ? 'at' : 'and'), join([tell(x)!, tell(y)!], ', '));
    if (placement.at !== undefined) parts.push(plain('at'), join([tell(placement.at.x)!, tell(placement.at.y)!], ', '));
    add('turned', placement.turn);
    if (placement.repeat !== undefined) {
        const { columns, rows, step } = placement.repeat;
        parts.push(plain(`repeat ${columns} x ${rows} every`), toldExtent(step));
    }
    return join(parts);
}

/** Parts of art as a recipe names several of them. */
function picked(picks: readonly Written<string>[] | undefined): string | undefined {
    return picks === undefined || picks.length === 0 ? undefined : picks.map(({ value }) => pickText(value)).join(', ');
}

function join(parts: readonly Told[], by = ' '): Told {
    return { text: parts.map((part) => part.text).join(by), key: parts.map((part) => part.key).join(by) };
}

function plain(text: string): Told {
    return { text, key: text };
}

/** As many digits as were written, and none that the binary fraction added. */
function exact(value: number): string {
    return String(Number(value.toPrecision(9)));
}

/** "potLife" as "pot life". */
function words(key: string): string {
    return key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function isQuantity(value: object): value is Quantity {
    return 'dimension' in value && 'unit' in value && 'tolerance' in value;
}

function isExtent(value: object): value is Extent {
    return 'width' in value && 'height' in value && 'where' in value;
}

function isWhere(value: unknown): value is Where {
    return typeof value === 'object' && value !== null && 'uri' in value && 'offset' in value && 'length' in value;
}
