/** Sorts stretches of an array upwards; keeps its scratch memory from one to the next. */
export class StretchSorter {
    private scratch = new Float64Array(256);
    private counts = new Uint32Array(257);

    /** Sorts at[from..to): by insertion while short, else dealt out to as many even boxes as there are values first. */
    sort(at: Float64Array, from: number, to: number): void {
        if (to - from > 24 && !this.deal(at, from, to)) {
            at.subarray(from, to).sort();
            return;
        }
        for (let i = from + 1; i < to; i++) {
            const value = at[i]!;
            let j = i - 1;
            while (j >= from && at[j]! > value) {
                at[j + 1] = at[j]!;
                j--;
            }
            at[j + 1] = value;
        }
    }

    /** False if the values lie so unevenly that a box would hold too many of them for the insertion that follows. */
    private deal(at: Float64Array, from: number, to: number): boolean {
        const size = to - from;
        if (size > this.scratch.length) {
            this.scratch = new Float64Array(2 * size);
            this.counts = new Uint32Array(2 * size + 1);
        }
        const { scratch, counts } = this;
        let low = at[from]!;
        let high = low;
        for (let i = from; i < to; i++) {
            const value = at[i]!;
            scratch[i - from] = value;
            if (value < low) low = value;
            if (value > high) high = value;
        }
        const scale = (size - 1) / (high - low);
        if (!Number.isFinite(scale)) return false;
        counts.fill(0, 0, size + 1);
        for (let i = 0; i < size; i++) counts[Math.floor((scratch[i]! - low) * scale) + 1]! += 1;
        for (let box = 0; box < size; box++) {
            if (counts[box + 1]! > 40) return false;
            counts[box + 1]! += counts[box]!;
        }
        for (let i = 0; i < size; i++) {
            const value = scratch[i]!;
            const box = Math.floor((value - low) * scale);
            at[from + counts[box]!] = value;
            counts[box]! += 1;
        }
        return true;
    }
}
