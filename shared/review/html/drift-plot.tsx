import { type Drift, month } from '../../burn/drift';
import { isoMoment } from '../../quantity/calendar';
import { showRatio } from '../../quantity/show';

const width = 600;
const height = 130;
const left = 46;
const bottom = 22;
const day = 86_400;
/** Of more days than these the figures would lie over each other. */
const mostFigures = 10;

/** The days' mean ratios over time, what was to be expected as a broken line, and the drift where one is told. */
export function DriftPlot({ drift: { days, level, slope, told }, label }: { drift: Drift; label: string }) {
    if (days.length < 2) return null;
    const first = days[0]!.day;
    const last = days.at(-1)!.day;
    const ratios = [1, ...days.map(({ ratio }) => ratio)];
    const margin = 0.25 * Math.max(0.04, Math.max(...ratios) - Math.min(...ratios));
    const low = Math.min(...ratios) - 1.6 * margin;
    const high = Math.max(...ratios) + margin;
    const x = (at: number): number => left + 10 + ((width - left - 20) * (at - first)) / Math.max(1, last - first);
    const y = (ratio: number): number => 6 + ((height - bottom - 12) * (high - ratio)) / (high - low);
    const middle = days.reduce((sum, each) => sum + each.day, 0) / days.length;
    const line = (at: number): number => level!.value + (slope!.value * (at - middle)) / month;
    const words = days.map(({ day: at, ratio }) => `${dateOf(at)} ${showRatio(ratio)}`).join(', ');
    return (
        <svg class="plot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${label}: ${words}`}>
            <rect width={width} height={height} fill="#fff" />
            <line x1={left} y1={y(1)} x2={width - 4} y2={y(1)} stroke="#8a8172" stroke-dasharray="4 3" />
            <text x={6} y={y(1) - 5} font-size="11" fill="#1d1a16">
                100 %
            </text>
            {told && level !== undefined && slope !== undefined && (
                <line x1={x(first)} y1={y(line(first))} x2={x(last)} y2={y(line(last))} stroke="#8a1c6b" stroke-width="1.5" />
            )}
            {days.map(({ day: at, ratio }) => (
                <g key={String(at)} fill="#1d1a16">
                    <circle cx={x(at)} cy={y(ratio)} r="4" />
                    {days.length <= mostFigures && (
                        <text x={x(at)} y={y(ratio) + 17} text-anchor={at === last ? 'end' : 'middle'} font-size="11">
                            {showRatio(ratio)}
                        </text>
                    )}
                </g>
            ))}
            <text x={x(first)} y={height - 6} font-size="11" fill="#1d1a16">
                {dateOf(first)}
            </text>
            <text x={x(last)} y={height - 6} text-anchor="end" font-size="11" fill="#1d1a16">
                {dateOf(last)}
            </text>
        </svg>
    );
}

function dateOf(at: number): string {
    return isoMoment(at * day).slice(0, 10);
}
