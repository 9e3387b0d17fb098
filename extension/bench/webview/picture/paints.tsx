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
            <pattern id="soot" patternUnits="userSpaceOnUse" width="7.3" height="6.1">
                <path
                    d="M0.4 0.9h1.6M3.1 0.4h2.2M5.6 2.1h1.3M1.2 2.6h2.4M4.2 3.5h1.1M0.2 4.4h1.9M3.3 5.2h2.6M6 4.6h1"
                    stroke="#000"
                    stroke-opacity="0.3"
                    stroke-width="0.5"
                    stroke-linecap="round"
                />
                <path
                    d="M2.4 1.5h0.9M6 0.9h0.7M0.6 3.4h0.8M5.3 2.9h0.6M2.6 4.5h0.5M1.4 5.6h1.1"
                    stroke="#fff"
                    stroke-opacity="0.1"
                    stroke-width="0.35"
                    stroke-linecap="round"
                />
            </pattern>
            <pattern id="flakes" patternUnits="userSpaceOnUse" width="5.3" height="4.7" patternTransform="rotate(17)">
                <rect width="5.3" height="4.7" fill="url(#gloss)" />
                <path
                    d="M0.4 0.5h0.25M1.7 1.3h0.2M3.2 0.4h0.3M4.6 1.6h0.2M0.8 2.4h0.3M2.5 2.9h0.2M3.9 2.5h0.25M1.4 3.9h0.2M4.7 3.7h0.3M3 4.3h0.2"
                    stroke="#fff"
                    stroke-opacity="0.75"
                    stroke-width="0.28"
                />
                <path
                    d="M1 1.1h0.25M2.4 0.9h0.2M4 1h0.3M0.3 1.8h0.2M2 2h0.3M3.3 1.7h0.2M4.4 3h0.25M0.9 3.2h0.2M2.1 3.5h0.3M3.6 3.6h0.2"
                    stroke="#000"
                    stroke-opacity="0.3"
                    stroke-width="0.28"
                />
            </pattern>
            <linearGradient id="gloss" x1="0" y1="0" x2="1" y2="1">
                <stop offset="0" stop-color="#fff" stop-opacity="0.22" />
                <stop offset="0.3" stop-color="#fff" stop-opacity="0.03" />
                <stop offset="0.55" stop-color="#fff" stop-opacity="0.14" />
                <stop offset="1" stop-color="#fff" stop-opacity="0" />
            </linearGradient>
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
