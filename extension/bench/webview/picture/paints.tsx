import type { BenchView } from '../../../../shared/view/bench-view';
import { pathId } from '../ids';
import { still } from '../still';
import { WoodPaints } from './wood';

/** Every shape and paint of the view, once; pictures refer to them. */
export const Paints = still(({ blanks, paths }: Pick<BenchView, 'blanks' | 'paths'>) => {
    return (
        <svg class="paints" width="0" height="0" aria-hidden="true" focusable="false">
            <defs>
                <WoodPaints blanks={blanks} />
                <Hatches />
                {Object.entries(paths).map(([id, data]) => (
                    <path key={id} id={pathId(id)} class="shape" d={data} />
                ))}
            </defs>
        </svg>
    );
});

/** Tellable apart without colour. In px, for drawings that are not scaled. */
function Hatches() {
    return (
        <>
            <pattern id="hatch-band" class="ink" patternUnits="userSpaceOnUse" width="5" height="5" patternTransform="rotate(45)">
                <path d="M0 0V5" />
            </pattern>
            <pattern
                id="hatch-clash"
                class="clash"
                patternUnits="userSpaceOnUse"
                width="7"
                height="7"
                patternTransform="rotate(45)"
            >
                <path d="M0 0V7M0 0H7" />
            </pattern>
            <pattern id="hatch-empty" class="dots" patternUnits="userSpaceOnUse" width="6" height="6">
                <circle cx="2" cy="2" r="1" />
            </pattern>
            <pattern id="hatch-long-grain" patternUnits="userSpaceOnUse" width="90" height="14">
                <path class="grain" d="M0 3q22-2 45 0t45 0M0 8q22 1.5 45 0t45 0M0 12q22-1 45 0t45 0" />
            </pattern>
            <pattern id="hatch-end-grain" patternUnits="userSpaceOnUse" width="34" height="18">
                <path class="grain" d="M0 15q17-13 34 0M-17 8q17-13 34 0M17 8q17-13 34 0" />
            </pattern>
            <pattern id="hatch-resin" patternUnits="userSpaceOnUse" width="9" height="9">
                <circle class="bubble" cx="2.5" cy="2.5" r="1.1" />
                <circle class="bubble" cx="7" cy="6.5" r="0.8" />
            </pattern>
            <pattern id="hatch-tape" patternUnits="userSpaceOnUse" width="12" height="12" patternTransform="rotate(12)">
                <rect width="12" height="12" fill="#e9dcb4" fill-opacity="0.62" />
                <path d="M0 0H12" stroke="#8a7a4a" stroke-opacity="0.5" stroke-width="0.6" />
            </pattern>
            <linearGradient id="sheen" x1="0" y1="0" x2="1" y2="1">
                <stop offset="0.1" stop-color="#fff" stop-opacity="0" />
                <stop offset="0.32" stop-color="#fff" stop-opacity="0.1" />
                <stop offset="0.42" stop-color="#fff" stop-opacity="0.02" />
                <stop offset="0.7" stop-color="#fff" stop-opacity="0.06" />
                <stop offset="0.85" stop-color="#fff" stop-opacity="0" />
            </linearGradient>
        </>
    );
}
