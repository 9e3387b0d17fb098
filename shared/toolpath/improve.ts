import Flatbush from 'flatbush';

const NEIGHBOURS = 8;
/** Points turned round at most while bettering: some tenths of a second. */
const MOST_WORK = 50_000_000;

/**
 * Betters an open way in place, by turning stretches round (2-opt) and moving stretches of up to three
 * points elsewhere (Or-opt), until nothing gets shorter or the work is used up. Only neighbours nearer than
 * the link that would be given up can gain (Lin & Kernighan, Oper. Res. 21:498, 1973), and a point is
 * looked at again only after its links have changed (Bentley, ORSA J. Computing 4:387, 1992). Both from memory.
 */
export function improve(order: Uint32Array, xs: Float64Array, ys: Float64Array, startX: number, startY: number): void {
    if (order.length < 3) return;
    const way = new Way(order, xs, ys, startX, startY);
    const near = neighbours(xs, ys);
    const waiting = order.slice();
    const isWaiting = new Uint8Array(order.length).fill(1);
    let head = 0;
    let left = waiting.length;
    while (left > 0 && way.work < MOST_WORK) {
        const point = waiting[head]!;
        head = (head + 1) % waiting.length;
        left -= 1;
        isWaiting[point] = 0;
        while (way.work < MOST_WORK && betterAt(way, point, near[point]!)) {
            for (const touched of [point, ...way.touched]) {
                if (isWaiting[touched] === 1) continue;
                isWaiting[touched] = 1;
                waiting[(head + left) % waiting.length] = touched;
                left += 1;
            }
        }
    }
}

/** The nearest other points of each point, nearest first. */
function neighbours(xs: Float64Array, ys: Float64Array): number[][] {
    const index = new Flatbush(xs.length);
    for (let i = 0; i < xs.length; i++) index.add(xs[i]!, ys[i]!);
    index.finish();
    return Array.from(xs, (x, i) => index.neighbors(x, ys[i]!, NEIGHBOURS + 1).filter((point) => point !== i));
}

function betterAt(way: Way, point: number, near: readonly number[]): boolean {
    way.work += 1;
    for (const other of near) {
        const i = way.place[point]!;
        const j = way.place[other]!;
        const apart = way.distance(i, j);
        const linkBefore = way.distance(i - 1, i);
        const linkAfter = way.distance(i, i + 1);
        if (apart >= linkBefore && apart >= linkAfter) return false;
        if (apart < linkAfter && joinBehind(way, i, j)) return true;
        if (apart < linkBefore && joinBefore(way, i, j)) return true;
    }
    return false;
}

/** Has `j` follow `i` in the place of what does now, or moves a stretch that ends with `i` beside it. */
function joinBehind(way: Way, i: number, j: number): boolean {
    if (i < j ? way.tryTwoOpt(i + 1, j) : way.tryTwoOpt(j + 1, i)) return true;
    for (let size = 0; size < 3 && size <= i; size++)
        if (way.tryOrOpt(i - size, i, j) || way.tryOrOpt(i - size, i, j - 1)) return true;
    return false;
}

/** The same with what stands before `i`. */
function joinBefore(way: Way, i: number, j: number): boolean {
    if (i < j ? way.tryTwoOpt(i, j - 1) : way.tryTwoOpt(j, i - 1)) return true;
    for (let size = 0; size < 3 && i + size < way.count; size++)
        if (way.tryOrOpt(i, i + size, j) || way.tryOrOpt(i, i + size, j - 1)) return true;
    return false;
}

/** An open way: position −1 is the start, position `count` is nowhere, since the way may end where it likes. */
class Way {
    readonly count: number;
    readonly place: Uint32Array;
    work = 0;
    /** Points whose links the last change cut or made. */
    touched: number[] = [];

    constructor(
        private readonly order: Uint32Array,
        private readonly xs: Float64Array,
        private readonly ys: Float64Array,
        private readonly startX: number,
        private readonly startY: number,
    ) {
        this.count = order.length;
        this.place = new Uint32Array(order.length);
        for (let i = 0; i < order.length; i++) this.place[order[i]!] = i;
    }

    distance(i: number, j: number): number {
        if (i >= this.count || j >= this.count) return 0;
        const ax = i < 0 ? this.startX : this.xs[this.order[i]!]!;
        const ay = i < 0 ? this.startY : this.ys[this.order[i]!]!;
        const bx = j < 0 ? this.startX : this.xs[this.order[j]!]!;
        const by = j < 0 ? this.startY : this.ys[this.order[j]!]!;
        return Math.sqrt((ax - bx) * (ax - bx) + (ay - by) * (ay - by));
    }

    private touch(...positions: number[]): void {
        this.touched = positions.filter((at) => at >= 0 && at < this.count).map((at) => this.order[at]!);
    }

    private turn(from: number, to: number): void {
        this.work += to - from;
        for (let i = from, j = to; i < j; i++, j--) {
            const a = this.order[i]!;
            const b = this.order[j]!;
            this.order[i] = b;
            this.order[j] = a;
            this.place[b] = i;
            this.place[a] = j;
        }
    }

    /** Turns the stretch round if that shortens the way. */
    tryTwoOpt(from: number, to: number): boolean {
        if (from >= to) return false;
        const before = this.distance(from - 1, from) + this.distance(to, to + 1);
        if (before - this.distance(from - 1, to) - this.distance(from, to + 1) <= 1e-9) return false;
        this.touch(from - 1, from, to, to + 1);
        this.turn(from, to);
        return true;
    }

    /** Moves the stretch to between `target` and the point after it, either way round, if that shortens the way. */
    tryOrOpt(from: number, to: number, target: number): boolean {
        if (target >= from - 1 && target <= to) return false;
        const before = this.distance(from - 1, from) + this.distance(to, to + 1) + this.distance(target, target + 1);
        const kept = this.distance(target, from) + this.distance(to, target + 1);
        const turned = this.distance(target, to) + this.distance(from, target + 1);
        if (before - this.distance(from - 1, to + 1) - Math.min(kept, turned) <= 1e-9) return false;
        this.touch(from - 1, from, to, to + 1, target, target + 1);
        // Turning stretch and what lies between as one, then what lies between back, leaves the stretch moved and turned.
        const onwards = target > to;
        const low = onwards ? from : target + 1;
        const high = Math.max(target, to);
        this.turn(low, high);
        const [a, b] = onwards ? [high - (to - from), high] : [low, low + (to - from)];
        if (onwards) this.turn(low, a - 1);
        else this.turn(b + 1, high);
        if (kept <= turned) this.turn(a, b);
        return true;
    }
}
