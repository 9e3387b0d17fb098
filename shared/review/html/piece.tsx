import { useId } from 'preact/hooks';
import { showLength } from '../../quantity/show';
import type { BlankView, LayerView, PieceView, SectionView } from '../../view/bench-view';
import { oneLine } from '../one-line';
import { Shape } from './paths';

interface BoardProps {
    readonly blank: BlankView;
    readonly piece: PieceView;
    /** Shape to be marked as different. */
    readonly differing?: string;
}

/** A piece as it lies on the bench, seen from above, in mm. */
export function Board({ blank, piece, differing }: BoardProps) {
    const { width, height } = blank;
    const hair = Math.max(width, height) / 500;
    const clip = `left-${useId()}`;
    const states = [
        ...(piece.masked ? ['masked'] : []),
        ...(piece.sealed ? ['sealed'] : []),
        ...(piece.sanded ? ['sanded'] : []),
        ...(piece.finished ? ['finished'] : []),
    ];
    return (
        <svg
            class="picture"
            viewBox={`0 0 ${width} ${height}`}
            role="img"
            aria-label={oneLine([blank.name, ...states].join(', '))}
        >
            {piece.outline !== undefined && (
                <clipPath id={clip}>
                    <Shape id={piece.outline} clip-rule="evenodd" />
                </clipPath>
            )}
            <g {...(piece.outline !== undefined && { 'clip-path': `url(#${clip})` })}>
                <rect width={width} height={height} fill={blank.colour} />
                {piece.layers.map((layer, index) => (
                    <Layer key={String(index)} layer={layer} hair={hair} />
                ))}
                {piece.masked && <rect width={width} height={height} fill="#e9e2c8" fill-opacity="0.55" />}
            </g>
            {differing !== undefined && <Shape id={differing} fill="url(#differs)" stroke="#8a1c6b" stroke-width={1.5 * hair} />}
        </svg>
    );
}

function Layer({ layer: { path, kind, colour, opacity, width = 0 }, hair }: { layer: LayerView; hair: number }) {
    if (kind === 'cut') return <Shape id={path} fill="none" stroke={colour} stroke-width={Math.max(2 * hair, width)} />;
    const hole = /^#[0-9a-f]{6}00$/i.test(colour);
    return <Shape id={path} fill={hole ? '#f3efe7' : colour} fill-opacity={hole ? 1 : opacity} />;
}

/** Heights between which sections are drawn, mm above the blank's bottom. */
export interface Heights {
    readonly low: number;
    readonly high: number;
}

/** The same for both versions of a piece, so that their depths can be compared; deep wood below the lowest floor is left out. */
export function heightsOf(sections: readonly SectionView[]): Heights {
    const spans = sections.flatMap((section) => section.spans);
    const high = Math.max(0, ...sections.map(({ top }) => top), ...spans.map((span) => span.top));
    const floor = Math.min(
        ...sections.map(({ face }) => face),
        ...spans.filter(({ kind }) => kind === 'wood').map((span) => span.top),
    );
    const bottom = Math.min(0, ...spans.map((span) => span.bottom));
    return { low: Math.max(bottom, floor - 0.6 * Math.max(high - floor, 0.2)), high };
}

/** A cut across the piece, stretched upwards. */
export function CrossSection({ section, heights: { low, high } }: { section: SectionView; heights: Heights }) {
    const { width, spans, y } = section;
    if (!(width > 0 && high > low)) return null;
    const label = `section ${showLength(y)} from the top edge, ${showLength(high - low)} of its height`;
    return (
        <svg class="section" viewBox={`0 0 ${width} ${high - low}`} preserveAspectRatio="none" role="img" aria-label={label}>
            {spans
                .filter((span) => span.top > low)
                .map((span, index) => (
                    <rect
                        key={String(index)}
                        x={span.from}
                        y={high - span.top}
                        width={span.to - span.from}
                        height={span.top - Math.max(span.bottom, low)}
                        fill={span.colour}
                    />
                ))}
        </svg>
    );
}
