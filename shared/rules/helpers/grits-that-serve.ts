import { fepaGrains } from '../../bench/abrasive-grades';
import { bridge, jumps } from '../../bench/sanding-sequence';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Sand } from '../../recipe/step';

/** The grits of a sanding from coarse to fine, with those put in between that a scratch needs to go; none where that is what is written. */
export function gritsThatServe({ grits, gritsWhere }: Sand): Fix[] {
    if (gritsWhere === undefined || !grits.every(({ grain }) => grain !== undefined && grain.value > 0)) return [];
    const ordered = grits.toSorted((a, b) => b.grain!.value - a.grain!.value);
    const found = jumps(ordered.map(({ grain }) => grain!.value));
    const names = ordered.flatMap((grit, i) => {
        const jump = found.find(({ to }) => to === i);
        return [...(jump === undefined ? [] : between(ordered[jump.from]!.grain!.value, grit.grain!.value)), grit.name];
    });
    if (names.join() === grits.map(({ name }) => name).join()) return [];
    const list = names.join(', ');
    return [
        {
            title: phrase`Sand with ${list}`,
            preferred: true,
            changes: [{ do: 'replace', where: gritsWhere, text: `grits ${list}` }],
        },
    ];
}

/** Names of P grits that close the gap between two grains in mm. */
function between(coarse: number, fine: number): string[] {
    const byGrain = new Map([...fepaGrains].map(([grade, grain]) => [grain / 1000, String(grade)]));
    return bridge(coarse, fine, [...byGrain.keys()]).map((grain) => byGrain.get(grain)!);
}
