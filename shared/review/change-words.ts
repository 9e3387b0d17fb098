import type { Change } from './change';
import { oneLine } from './one-line';

/** "depth: 0.5 mm → 0.6 mm (+0.1 mm)". */
export function changeWords({ label, before, after, by }: Change): string {
    return oneLine(`${label}: ${before ?? 'nothing'} → ${after ?? 'nothing'}${by === undefined ? '' : ` (${by})`}`);
}
