import { useRef } from 'preact/hooks';
import type { PressSection as Section } from '../../../../shared/bench/press-section';
import { showLength, showNumber } from '../../../../shared/quantity/show';
import { useSize } from '../use-size';

interface PressSectionProps {
    readonly section: Section;
    readonly boardColour: string;
    readonly veneer: string;
    readonly unit: string | undefined;
}

const HEIGHT = 150; // px
const ABOVE = 16; // px of air over what stands highest

/** The two halves pressed together and cut across, heights drawn much larger than widths. */
export function PressSection({ section, boardColour, veneer, unit }: PressSectionProps) {
    const svg = useRef<SVGSVGElement>(null);
    const { width } = useSize(svg);
    const { from, to, board, top } = section;
    const lowest = Math.min(0, ...heights(board));
    const highest = Math.max(0, top);
    const across = width / Math.max(to - from, 1e-6);
    const up = (HEIGHT - ABOVE - 34) / Math.max(highest - lowest, 1e-6);
    const face = ABOVE + highest * up;
    const point = (x: number, height: number) => `${round((x - from) * across)} ${round(face - height * up)}`;
    const line = (points: readonly number[]) => {
        const parts: string[] = [];
        for (let i = 0; i + 1 < points.length; i += 2) parts.push(point(points[i]!, points[i + 1]!));
        return parts.join('L');
    };
    return (
        <figure class="section press-section">
            <svg
                ref={svg}
                height={HEIGHT}
                role="img"
                aria-label={`Section through both halves ${showLength(section.y, unit)} from the top: the veneer stands ${showLength(Math.max(0, top), unit)} above the board’s face.`}
            >
                <path class="outline" fill={boardColour} d={`M0 ${HEIGHT}L${line(board)}L${round(width)} ${HEIGHT}Z`} />
                {section.veneer.map((piece, index) => (
                    <path
                        key={index}
                        class="outline"
                        fill={veneer}
                        d={`M${point(piece[0]!, top)}L${line(piece)}L${point(piece[piece.length - 2]!, top)}Z`}
                    />
                ))}
                <path class="face" d={`M0 ${round(face)}H${round(width)}`} />
                <text class="face-label" x={width - 4} y={face - 4}>
                    board’s face
                </text>
            </svg>
            <figcaption>
                Cut along the dashed line of the map, {showLength(section.y, unit)} from the top, heights drawn{' '}
                {showNumber(up / across, 0)} times
            </figcaption>
        </figure>
    );
}

function heights(points: readonly number[]): number[] {
    return points.filter((_, index) => index % 2 === 1);
}

function round(px: number): number {
    return Math.round(px * 100) / 100;
}
