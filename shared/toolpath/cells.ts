/** Points in square cells of about two points each. */
export class Cells {
    readonly columns: number;
    readonly rows: number;
    private readonly minX: number;
    private readonly minY: number;
    private readonly size: number;
    private readonly heads: Int32Array;
    private readonly next: Int32Array;

    constructor(
        private readonly xs: Float64Array,
        private readonly ys: Float64Array,
    ) {
        let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
        for (let i = 0; i < xs.length; i++) {
            minX = Math.min(minX, xs[i]!);
            maxX = Math.max(maxX, xs[i]!);
            minY = Math.min(minY, ys[i]!);
            maxY = Math.max(maxY, ys[i]!);
        }
        this.minX = minX;
        this.minY = minY;
        const width = maxX - minX;
        const height = maxY - minY;
        this.size = Math.max(Math.sqrt((2 * width * height) / xs.length), (2 * Math.max(width, height)) / xs.length) || 1;
        this.columns = Math.floor(width / this.size) + 1;
        this.rows = Math.floor(height / this.size) + 1;
        this.heads = new Int32Array(this.columns * this.rows).fill(-1);
        this.next = new Int32Array(xs.length);
        for (let i = xs.length - 1; i >= 0; i--) {
            const cell = this.cellOf(i);
            this.next[i] = this.heads[cell]!;
            this.heads[cell] = i;
        }
    }

    private column(x: number): number {
        return Math.min(this.columns - 1, Math.max(0, Math.floor((x - this.minX) / this.size)));
    }

    private row(y: number): number {
        return Math.min(this.rows - 1, Math.max(0, Math.floor((y - this.minY) / this.size)));
    }

    private cellOf(i: number): number {
        return this.row(this.ys[i]!) * this.columns + this.column(this.xs[i]!);
    }

    remove(point: number): void {
        const cell = this.cellOf(point);
        let at = this.heads[cell]!;
        if (at === point) {
            this.heads[cell] = this.next[point]!;
            return;
        }
        while (this.next[at] !== point) at = this.next[at]!;
        this.next[at] = this.next[point]!;
    }

    /** The `most` nearest points that are left, nearest first. */
    nearest(x: number, y: number, most: number): { point: number; distance: number }[] {
        const found: { point: number; distance: number }[] = [];
        const column = this.column(x);
        const row = this.row(y);
        // A point outside of the cells is further from each ring of cells than one inside.
        const outside = Math.max(0, this.minX - x, this.minY - y);
        const rings = Math.max(this.columns, this.rows);
        for (let ring = 0; ring <= rings; ring++) {
            if (found.length >= most && found[most - 1]!.distance <= (ring - 1) * this.size - outside) break;
            this.eachInRing(column, row, ring, (point) => {
                const distance = Math.hypot(this.xs[point]! - x, this.ys[point]! - y);
                if (found.length >= most && distance >= found[most - 1]!.distance) return;
                let at = found.length;
                while (at > 0 && found[at - 1]!.distance > distance) at--;
                found.splice(at, 0, { point, distance });
                if (found.length > most) found.pop();
            });
        }
        return found;
    }

    private eachInRing(column: number, row: number, ring: number, visit: (point: number) => void): void {
        for (let r = Math.max(0, row - ring); r <= Math.min(this.rows - 1, row + ring); r++) {
            const edge = r === row - ring || r === row + ring;
            const step = edge || ring === 0 ? 1 : 2 * ring;
            for (let c = column - ring; c <= column + ring; c += step) {
                if (c < 0 || c >= this.columns) continue;
                for (let at = this.heads[r * this.columns + c]!; at >= 0; at = this.next[at]!) visit(at);
            }
        }
    }
}
