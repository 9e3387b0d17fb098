import type { BlankView } from '../../../../shared/view/bench-view';
import { woodId } from '../ids';
import { grainAlong } from './grain';

interface Face {
    readonly name: string;
    readonly colour: string;
    readonly width: number;
    readonly height: number;
    readonly grain: 'width' | 'height' | undefined;
}

/** Paints for every wood of the view: each blank's own, on a tile as large as the largest blank, so that nothing repeats. */
export function WoodPaints({ blanks }: { blanks: readonly BlankView[] }) {
    const width = Math.max(1, ...blanks.map((blank) => blank.width));
    const height = Math.max(1, ...blanks.map((blank) => blank.height));
    return (
        <>
            {blanks.map(({ name, colour, grain }) => (
                <WoodPaint key={`${name} ${colour}`} name={name} colour={colour} grain={grain} width={width} height={height} />
            ))}
        </>
    );
}

const drawn = new Map<string, ReturnType<typeof grainAlong>>();

/** Working out a board's grain takes a moment, and it never changes. */
function grainOf(name: string, length: number, breadth: number) {
    const key = `${name} ${length} ${breadth}`;
    const known = drawn.get(key) ?? grainAlong(name, length, breadth);
    if (drawn.size > 60) drawn.clear();
    drawn.set(key, known);
    return known;
}

function WoodPaint({ name, colour, grain, width, height }: Face) {
    const upright = grain === 'height';
    const [length, breadth] = upright ? [height, width] : [width, height];
    const lines = grain === undefined ? undefined : grainOf(name, length, breadth);
    const thin = breadth / 420;
    return (
        <pattern id={woodId(name, colour)} patternUnits="userSpaceOnUse" width={width} height={height}>
            <rect width={width} height={height} fill={colour} />
            {lines !== undefined && (
                <g fill="none" stroke="#1a0d04" transform={upright ? `translate(${width} 0) rotate(90)` : undefined}>
                    <path d={lines.fine} stroke-opacity="0.12" stroke-width={thin * 1.3} />
                    <path d={lines.strong} stroke-opacity="0.1" stroke-width={thin * 3.4} />
                    <path d={lines.strong} stroke-opacity="0.14" stroke-width={thin * 1.2} />
                    <path d={lines.pores} stroke-opacity="0.25" stroke-width={thin * 0.9} />
                </g>
            )}
        </pattern>
    );
}
