import type { BlankView } from '../../../../shared/view/bench-view';
import { woodId } from '../ids';
import { type Figure, grainAlong } from './grain';

interface Face {
    readonly blank: BlankView;
    readonly width: number;
    readonly height: number;
}

/** Paints for every wood of the view: each blank's own, on a tile as large as the largest blank, so that nothing repeats. */
export function WoodPaints({ blanks }: { blanks: readonly BlankView[] }) {
    const width = Math.max(1, ...blanks.map((blank) => blank.width));
    const height = Math.max(1, ...blanks.map((blank) => blank.height));
    return (
        <>
            {blanks.map((blank) => (
                <WoodPaint key={`${blank.name} ${blank.colour}`} blank={blank} width={width} height={height} />
            ))}
        </>
    );
}

const drawn = new Map<string, ReturnType<typeof grainAlong>>();

/** Working out a board's grain takes a moment, and it never changes. */
function grainOf(name: string, length: number, breadth: number, figure: Figure) {
    const key = `${name} ${length} ${breadth} ${figure.sawn} ${figure.pores} ${figure.thickness}`;
    const known = drawn.get(key) ?? grainAlong(name, length, breadth, figure);
    if (drawn.size > 60) drawn.clear();
    drawn.set(key, known);
    return known;
}

function WoodPaint({ blank: { name, colour, grain, figure, thickness }, width, height }: Face) {
    const upright = grain === 'height';
    const [length, breadth] = upright ? [height, width] : [width, height];
    const lines =
        grain === undefined || figure === undefined ? undefined : grainOf(name, length, breadth, { ...figure, thickness });
    return (
        <pattern id={woodId(name, colour)} patternUnits="userSpaceOnUse" width={width} height={height}>
            <rect width={width} height={height} fill={colour} />
            {lines !== undefined && (
                <g fill="none" stroke="#1a0d04" transform={upright ? 'matrix(0 1 1 0 0 0)' : undefined}>
                    <path d={lines.fine} stroke-opacity="0.16" stroke-width={lines.band} />
                    <path d={lines.strong} stroke-opacity="0.14" stroke-width={lines.band * 1.7} />
                    <path d={lines.strong} stroke-opacity="0.16" stroke-width={lines.band * 0.6} />
                    <path d={lines.pores} stroke-opacity={lines.poreStrength} stroke-width="0.18" />
                </g>
            )}
        </pattern>
    );
}
