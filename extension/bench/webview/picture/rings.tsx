import type { FindingView } from '../../../../shared/view/bench-view';
import { findingKeys } from '../notes/finding-keys';
import type { Placing } from './zoom';

interface RingsProps {
    readonly findings: readonly FindingView[];
    readonly blank: string;
    readonly placing: Placing;
    /** Whether the face of which a finding speaks is up. */
    readonly isUp: (finding: FindingView) => boolean;
}

const SMALLEST = 9; // px
const MOST = 60; // rings of one finding: more would hide the piece

/** Rings around the places that findings speak of, with the finding's number in the list. */
export function Rings({ findings, blank, placing, isUp }: RingsProps) {
    const keys = findingKeys(findings);
    return (
        <g class="rings">
            {findings.map((finding, number) =>
                finding.spots
                    .filter((spot) => spot.blank === blank && isUp(finding))
                    .slice(0, MOST)
                    .map((spot, index) => {
                        const x = placing.shiftX + spot.x * placing.scale;
                        const y = placing.shiftY + spot.y * placing.scale;
                        const radius = Math.max((spot.size / 2) * placing.scale + 4, SMALLEST);
                        return (
                            <g key={`${keys[number]} ${index}`} class={`ring ${finding.severity}`}>
                                <title>{`Ring ${number + 1}: ${finding.message}`}</title>
                                <circle class="under" cx={x} cy={y} r={radius} />
                                <circle cx={x} cy={y} r={radius} />
                                {index === 0 && (
                                    <g transform={`translate(${x + radius * 0.75} ${y - radius * 0.75})`}>
                                        <circle class="tag" r="8.5" />
                                        <text y="3.5">{number + 1}</text>
                                    </g>
                                )}
                            </g>
                        );
                    }),
            )}
        </g>
    );
}
