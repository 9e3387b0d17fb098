/**
 * A short open way through all points, from a start: nearest neighbour, then bettered by turning
 * stretches round (2-opt) and moving short stretches elsewhere (Or-opt) among near neighbours until
 * nothing gets shorter or the work is used up. Deterministic. Coordinates in mm, the answer is the
 * order of the points' indices.
 */
export function tour(xs: Float64Array, ys: Float64Array, startX: number, startY: number): Uint32Array {
    const order = nearestFirst(xs, ys, startX, startY);
    improve(order, xs, ys, startX, startY);
    return order;
}

/** Length of a way through points in a given order, from a start. */
export function tourLength(order: ArrayLike<number>, xs: Float64Array, ys: Float64Array, startX: number, startY: number): number {
    let x = startX;
    let y = startY;
    let length = 0;
    for (let i = 0; i < order.length; i++) {
        const at = order[i]!;
        length += Math.hypot(xs[at]! - x, ys[at]! - y);
        x = xs[at]!;
        y = ys[at]!;
    }
    return length;
}

/** Points in square cells of about two points each. */
class Cells {
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

function nearestFirst(xs: Float64Array, ys: Float64Array, startX: number, startY: number): Uint32Array {
    const order = new Uint32Array(xs.length);
    if (xs.length === 0) return order;
    const cells = new Cells(xs, ys);
    let x = startX;
    let y = startY;
    for (let i = 0; i < xs.length; i++) {
        const [near] = cells.nearest(x, y, 1);
        order[i] = near!.point;
        cells.remove(near!.point);
        x = xs[near!.point]!;
        y = ys[near!.point]!;
    }
    return order;
}

const NEIGHBOURS = 8;
/** Points moved at most while bettering: a second or two of work. */
const MOST_WORK = 100_000_000;

function improve(order: Uint32Array, xs: Float64Array, ys: Float64Array, startX: number, startY: number): void {
    const count = order.length;
    if (count < 3) return;
    const place = new Uint32Array(count);
    for (let i = 0; i < count; i++) place[order[i]!] = i;
    const cells = new Cells(xs, ys);
    const near = Array.from(xs, (x, i) =>
        cells.nearest(x, ys[i]!, NEIGHBOURS + 1).flatMap(({ point }) => (point === i ? [] : [point])),
    );
    // Position −1 is the start, position count is nowhere: the way is open at its end.
    const distance = (i: number, j: number): number => {
        if (i >= count || j >= count) return 0;
        const ax = i < 0 ? startX : xs[order[i]!]!;
        const ay = i < 0 ? startY : ys[order[i]!]!;
        const bx = j < 0 ? startX : xs[order[j]!]!;
        const by = j < 0 ? startY : ys[order[j]!]!;
        return Math.hypot(ax - bx, ay - by);
    };
    let work = 0;
    const turn = (from: number, to: number): void => {
        work += to - from;
        for (let i = from, j = to; i < j; i++, j--) {
            const a = order[i]!;
            const b = order[j]!;
            order[i] = b;
            order[j] = a;
            place[b] = i;
            place[a] = j;
        }
    };
    /** Turns order[from..to] round if that shortens the way. */
    const tryTurn = (from: number, to: number): boolean => {
        if (from >= to) return false;
        const gain = distance(from - 1, from) + distance(to, to + 1) - distance(from - 1, to) - distance(from, to + 1);
        if (gain <= 1e-9) return false;
        turn(from, to);
        return true;
    };
    /** Moves a stretch of up to three points to between two neighbours elsewhere, by three turns. */
    const tryMove = (from: number, to: number, target: number): boolean => {
        // The stretch goes between target and target + 1, as it is or turned round.
        if (target >= from - 1 && target <= to) return false;
        const taken = distance(from - 1, from) + distance(to, to + 1) - distance(from - 1, to + 1) + distance(target, target + 1);
        const kept = distance(target, from) + distance(to, target + 1);
        const turned = distance(target, to) + distance(from, target + 1);
        if (taken - Math.min(kept, turned) <= 1e-9) return false;
        const size = to - from;
        const low = target > to ? from : target + 1;
        const high = Math.max(target, to);
        turn(low, high);
        const [a, b] = target > to ? [high - size, high] : [low, low + size];
        if (target > to) turn(low, a - 1);
        else turn(b + 1, high);
        if (kept <= turned) turn(a, b);
        return true;
    };
    for (let better = true; better && work < MOST_WORK; ) {
        better = false;
        for (let point = 0; point < count && work < MOST_WORK; point++) {
            work += NEIGHBOURS;
            for (const other of near[point]!) {
                const i = place[point]!;
                const j = place[other]!;
                const moved =
                    (i < j ? tryTurn(i + 1, j) || tryTurn(i, j - 1) : tryTurn(j + 1, i) || tryTurn(j, i - 1)) ||
                    [0, 1, 2].some(
                        (size) =>
                            (i + size < count && tryMove(i, i + size, j)) ||
                            (i - size >= 0 && (tryMove(i - size, i, j) || tryMove(i - size, i, j - 1))),
                    );
                better ||= moved;
            }
        }
    }
}
