import type { Drift } from '../../burn/drift';
import { showRatio } from '../../quantity/show';

const width = 600;
const height = 130;
const left = 46;
const bottom = 22;
/** Of more days than these the figures would lie over each other. */
const mostFigures = 10;

/** The power of each day over time, that of the coupon as a broken line, and the days since a drift that is told ringed. */
export function DriftPlot({ drift: { days: measured, told }, label }: { drift: Drift; label: string }) {
    if (measured.length < 2) return null;
    const days = measured.map(({ date, day, logFactor }) => ({ date, day, ratio: Math.exp(logFactor) }));
    const first = days[0]!.day;
    const last = days.at(-1)!.day;
    const isSince = (date: string): boolean => told !== undefined && date >= told.since;
    const ratios = [1, ...days.map(({ ratio }) => ratio)];
    const margin = 0.25 * Math.max(0.04, Math.max(...ratios) - Math.min(...ratios));
    const low = Math.min(...ratios) - 1.6 * margin;
    const high = Math.max(...ratios) + margin;
    const x = (at: number): number => left + 10 + ((width - left - 20) * (at - first)) / Math.max(1, last - first);
    const y = (ratio: number): number => 6 + ((height - bottom - 12) * (high - ratio)) / (high - low);
    const words = days.map(({ date, ratio }) => `${date} ${showRatio(ratio)}`).join(', ');
    return (
        <svg class="plot" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${label}: ${words}`}>
            <rect width={width} height={height} fill="#fff" />
            <line x1={left} y1={y(1)} x2={width - 4} y2={y(1)} stroke="#8a8172" stroke-dasharray="4 3" />
            <text x={6} y={y(1) - 5} font-size="11" fill="#1d1a16">
                100 %
            </text>
            {days.map(({ date, day: at, ratio }) => (
                <g key={String(at)} fill="#1d1a16">
                    <circle cx={x(at)} cy={y(ratio)} r="4" {...(isSince(date) && { stroke: '#8a1c6b', 'stroke-width': 3 })} />
                    {days.length <= mostFigures && (
                        <text x={x(at)} y={y(ratio) + 17} text-anchor={at === last ? 'end' : 'middle'} font-size="11">
                            {showRatio(ratio)}
                        </text>
                    )}
                </g>
            ))}
            <text x={x(first)} y={height - 6} font-size="11" fill="#1d1a16">
                {days[0]!.date}
            </text>
            <text x={x(last)} y={height - 6} text-anchor="end" font-size="11" fill="#1d1a16">
                {days.at(-1)!.date}
            </text>
        </svg>
    );
}
