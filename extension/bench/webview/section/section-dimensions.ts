import { showLength, showLengthInterval } from '../../../../shared/quantity/show';
import type { SectionView, SpanView } from '../../../../shared/view/bench-view';

/** A height to be written beside a section: between two heights, at x mm along the cut. */
export interface Dimension {
    readonly id: string;
    readonly x: number;
    readonly from: number;
    readonly to: number;
    readonly text: string;
}

const SMALL = 5e-4; // mm: less than this is drawing, not wood

/** The heights worth writing: the deepest floor, what lies in it, and how far it stands proud or sunken. */
export function dimensionsOf(section: SectionView, unit?: string): Dimension[] {
    const show = (mm: number) => showLength(mm, unit);
    const dug = widest(
        section.spans.filter((span) => span.kind === 'wood' && span.top < section.face - SMALL && span.top > SMALL),
    );
    if (dug === undefined) return [];
    const middle = (dug.from + dug.to) / 2;
    const depth = section.face - dug.top;
    const { low, high } = dug.band ?? { low: dug.top, high: dug.top };
    const known = { value: depth, low: section.face - high, high: section.face - low };
    // A band that the board's own faces cut short is no plus and minus: the words say both ends then.
    const text = `${showLengthInterval(known, unit)} deep`;
    const list: Dimension[] = [{ id: 'depth', x: middle, from: dug.top, to: section.face, text }];
    const lying = widest(section.spans.filter((span) => isFilling(span) && span.from < dug.to && span.to > dug.from));
    if (lying === undefined) return list;
    const x = (lying.from + lying.to) / 2;
    const what = lying.kind === 'resin' ? 'resin' : 'veneer';
    list.push({ id: 'filling', x, from: lying.bottom, to: lying.top, text: `${show(lying.top - lying.bottom)} ${what}` });
    const proud = lying.top - section.face;
    if (proud > SMALL) list.push({ id: 'proud', x, from: section.face, to: lying.top, text: `${show(proud)} proud` });
    if (proud < -SMALL) list.push({ id: 'sunken', x, from: lying.top, to: section.face, text: `${show(-proud)} sunken` });
    return list;
}

function isFilling({ kind }: SpanView): boolean {
    return kind === 'resin' || kind === 'inlay';
}

function widest(spans: readonly SpanView[]): SpanView | undefined {
    return spans.reduce<SpanView | undefined>(
        (best, span) => (best === undefined || span.to - span.from > best.to - best.from ? span : best),
        undefined,
    );
}
