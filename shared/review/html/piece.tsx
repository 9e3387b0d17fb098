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
            <rect width={width} height={height} fill={blank.colour} />
            {piece.layers.map((layer, index) => (
                <Layer key={String(index)} layer={layer} hair={hair} />
            ))}
            {piece.masked && <rect width={width} height={height} fill="#e9e2c8" fill-opacity="0.55" />}
            {differing !== undefined && <Shape id={differing} fill="url(#differs)" stroke="#8a1c6b" stroke-width={1.5 * hair} />}
        </svg>
    );
}

function Layer({ layer: { path, kind, colour, opacity }, hair }: { layer: LayerView; hair: number }) {
    if (kind === 'cut') return <Shape id={path} fill="none" stroke={colour} stroke-width={2 * hair} />;
    const hole = /^#[0-9a-f]{6}00$/i.test(colour);
    return <Shape id={path} fill={hole ? '#f3efe7' : colour} fill-opacity={hole ? 1 : opacity} />;
}

/** A cut across the piece. Only the upper part of thick wood is drawn, stretched upwards. */
export function CrossSection({ section }: { section: SectionView }) {
    const { width, top, face, spans, y } = section;
    if (!(width > 0 && top > 0)) return null;
    const floor = Math.min(face, ...spans.filter(({ kind }) => kind === 'wood').map((span) => span.top));
    const highest = Math.max(top, ...spans.map((span) => span.top));
    const lowest = Math.max(Math.min(0, ...spans.map((span) => span.bottom)), floor - 0.6 * Math.max(highest - floor, 0.2));
    const label = `section ${showLength(y)} from the top edge, ${showLength(highest - lowest)} of its height`;
    return (
        <svg
            class="section"
            viewBox={`0 0 ${width} ${highest - lowest}`}
            preserveAspectRatio="none"
            role="img"
            aria-label={label}
        >
            {spans
                .filter((span) => span.top > lowest)
                .map((span, index) => (
                    <rect
                        key={String(index)}
                        x={span.from}
                        y={highest - span.top}
                        width={span.to - span.from}
                        height={span.top - Math.max(span.bottom, lowest)}
                        fill={span.colour}
                    />
                ))}
        </svg>
    );
}
