import { doseField } from '../burn/dose-field';
import { bounds } from '../geometry/measure';
import { depthByShare } from './half-edge';
import type { LowerFloor, PressHalves } from './virtual-press';

/** Both halves pressed together, cut along a horizontal; heights in mm above the board's face. */
export interface PressSection {
    readonly y: number;
    readonly from: number;
    readonly to: number;
    /** The board's surface: x, height, x, height … */
    readonly board: readonly number[];
    /** Pieces of veneer: the same for their underside, from left to right; their top is `top`. */
    readonly veneer: readonly (readonly number[])[];
    readonly top: number;
}

/** Finer than this nothing can be seen in a section across a whole piece, mm; and the most cells along it. */
const straight = 0.004;
const mostColumns = 60_000;

/** The section at `y`, with a margin on either side, when the veneer is pressed in by `insertion` mm. */
export function pressSection(halves: PressHalves, insertion: number, y: number): PressSection | undefined {
    const box = bounds(halves.veneer.standing);
    const sigma = Math.max(halves.pocket.sigma, halves.veneer.sigma);
    if (box === undefined || !(sigma > 0 && sigma < 1e6)) return undefined;
    const edge = Math.max(1, (box.maxX - box.minX) * 0.04);
    const from = box.minX - edge;
    const to = box.maxX + edge;
    const cell = Math.max(sigma / 2, (to - from) / mostColumns);
    const half = Math.ceil((4 * sigma) / cell) + 1;
    const grid = {
        x: from - half * cell,
        y: y - (half + 0.5) * cell,
        cell,
        columns: Math.ceil((to - from) / cell) + 2 * half,
        rows: 2 * half + 1,
    };
    const dug = doseField(halves.pocket.region, halves.pocket.sigma, { grid });
    const stands = doseField(halves.veneer.standing, halves.veneer.sigma, { grid });
    if (dug === undefined || stands === undefined) return undefined;
    const { floors = [], sunk = 0 } = halves;
    const lowered = (places: readonly LowerFloor[], spread: number): ((at: number, from: number) => number) => {
        const fields = places.map(({ region, more }) => ({ more, field: doseField(region, spread, { grid }) }));
        return (at, from) => fields.reduce((sum, one) => sum + one.more * (one.field?.part[at] ?? 0), from);
    };
    const boardAt = lowered(floors, halves.pocket.sigma);
    const veneerAt = lowered(halves.veneer.lower ?? [], halves.veneer.sigma);
    const depthIn = depthByShare(halves.pocket);
    const depthOver = depthByShare(halves.veneer);
    const board = new Line();
    const pieces: Line[] = [];
    let piece: Line | undefined;
    for (let column = half; column < grid.columns - half; column++) {
        const at = half * grid.columns + column;
        const x = grid.x + (column + 0.5) * cell;
        board.add(x, -Math.max(0, boardAt(at, depthIn.at(dug.part[at]!) - sunk)));
        const away = Math.max(0, veneerAt(at, depthOver.at(1 - stands.part[at]!)));
        if (stands.part[at]! > 1e-6 && away < halves.thickness) {
            if (piece === undefined) {
                piece = new Line();
                pieces.push(piece);
            }
            piece.add(x, away - insertion);
        } else {
            piece = undefined;
        }
    }
    return {
        y,
        from,
        to,
        board: board.points(),
        veneer: pieces.map((line) => line.points()),
        top: halves.thickness - insertion,
    };
}

/** Points from left to right, without those that lie on the straight between their neighbours. */
class Line {
    private readonly kept: number[] = [];
    private last: [number, number] | undefined;
    /** Slopes from the last kept point that pass all points since within `straight`. */
    private low = Number.NEGATIVE_INFINITY;
    private high = Number.POSITIVE_INFINITY;

    add(x: number, y: number): void {
        const [fromX, fromY] = this.kept.slice(-2) as [number, number];
        if (this.last !== undefined && this.kept.length > 0) {
            const slope = (y - fromY) / (x - fromX);
            if (slope < this.low || slope > this.high) {
                this.keep(...this.last);
                this.add(x, y);
                return;
            }
            this.low = Math.max(this.low, (y - straight - fromY) / (x - fromX));
            this.high = Math.min(this.high, (y + straight - fromY) / (x - fromX));
        } else if (this.kept.length === 0) {
            this.keep(x, y);
            return;
        } else {
            this.low = (y - straight - fromY) / (x - fromX);
            this.high = (y + straight - fromY) / (x - fromX);
        }
        this.last = [x, y];
    }

    points(): number[] {
        if (this.last !== undefined) this.keep(...this.last);
        return this.kept;
    }

    private keep(x: number, y: number): void {
        this.kept.push(x, y);
        this.last = undefined;
        this.low = Number.NEGATIVE_INFINITY;
        this.high = Number.POSITIVE_INFINITY;
    }
}
