import { fromBase, type Quantity, toBase } from '../../quantity/quantity';
import { showNumber } from '../../quantity/show';

/** Depths in which wood is usually engraved, mm, for each unit that another is taken for: `0.55 in` for mm, `20 mm` for thou. @commonPractice */
const usual: readonly (readonly [unit: string, low: number, high: number])[] = [
    ['mm', 0.1, 3],
    ['thou', 0.5, 3],
];

/** An unusual depth as it would be usual with the same number in another unit: 0.55 in as 0.55 mm; undefined where there is none. */
export function usualReading({ value, unit }: Quantity): { readonly text: string; readonly mm: number } | undefined {
    if (usual.every(([, , high]) => value <= high)) return undefined;
    const written = fromBase(value, unit);
    for (const [other, low, high] of usual) {
        const mm = toBase(written, other) ?? 0;
        if (other !== unit && mm >= low && mm <= high) return { text: `${showNumber(written, 3)} ${other}`, mm };
    }
    return undefined;
}
