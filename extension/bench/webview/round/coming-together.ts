import type { InlayView } from '../../../../shared/view/bench-view';
import type { RoundView } from '../../../../shared/view/round-view';
import { poseAt } from '../picture/turning';
import type { Bounds, PlacedPiece } from './scene';

/**
 * Both halves of an inlay on their way: the board with its pocket, and the relief from beside it, lifted, turned over and let down until it
 * stands on the pocket's floor.
 *
 * @param at 0 side by side, 1 laid in
 */
export function comingTogether(
    inlay: InlayView,
    pocket: RoundView,
    relief: RoundView,
    at: number,
): { pieces: PlacedPiece[]; within: Bounds } {
    const { way, turn } = poseAt(at);
    const turned = inlay.faceUp ? 0 : Math.acos(Math.max(-1, Math.min(1, turn)));
    const gap = 0.08 * Math.max(pocket.width, relief.width);
    const { middle } = inlay.relief;
    const from = { x: pocket.width / 2 + gap + middle.x, y: middle.y - relief.height / 2 };
    const to = { x: inlay.pocket.middle.x - pocket.width / 2, y: inlay.pocket.middle.y - pocket.height / 2 };
    const floor = floorOf(pocket);
    // High enough to clear the board while it stands on its edge.
    const clear = pocket.thickness + 0.5 * relief.width * Math.sin(turned);
    const arc = Math.sin(Math.PI * Math.min(1, at)) * 0.12 * relief.width;
    const z = at >= 1 ? floor : Math.max(way * (floor + (1 - way) * pocket.thickness), Math.sin(turned) * clear) + arc;
    return {
        pieces: [
            { view: pocket, x: 0, y: 0, z: 0, turn: 0 },
            {
                view: relief,
                x: from.x + (to.x - from.x) * way,
                y: from.y + (to.y - from.y) * way,
                z,
                turn: -turned,
                about: middle,
            },
        ],
        within: {
            left: -pocket.width / 2,
            right: pocket.width / 2 + gap + relief.width,
            far: -Math.max(pocket.height, relief.height) / 2,
            near: Math.max(pocket.height, relief.height) / 2,
        },
    };
}

/** Height of the burnt floor that takes most of the face. */
function floorOf({ surfaces, looks, thickness }: RoundView): number {
    const floors = surfaces.filter(({ look, down }) => down !== true && looks[look]!.kind === 'char');
    const widest = floors.toSorted((a, b) => areaOf(b) - areaOf(a))[0];
    return widest?.z ?? thickness;
}

function areaOf({ points, corners }: RoundView['surfaces'][number]): number {
    let sum = 0;
    for (let i = 0; i + 2 < corners.length; i += 3) {
        const [a, b, c] = [2 * corners[i]!, 2 * corners[i + 1]!, 2 * corners[i + 2]!];
        sum +=
            ((points[b]! - points[a]!) * (points[c + 1]! - points[a + 1]!) -
                (points[c]! - points[a]!) * (points[b + 1]! - points[a + 1]!)) /
            2;
    }
    return sum;
}
