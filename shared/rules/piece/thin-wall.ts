import type { BlankPlan } from '../../plan/plan';
import { showLength } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { roundLength } from '../helpers/ask-depth';
import { leastBridge, leastWall } from '../helpers/least-wall';
import { type Wall, wallsOf } from '../helpers/walls';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'thin-wall',
    title: 'Wall too thin',
    severities: ['warning'],
    condition:
        'Between open pockets of two steps less wood is left than six tenths of the depth; towards a cut or the blank’s edge, nine tenths (more in soft or ring-porous wood). Between two cuts less is left than a fifth of the board’s thickness.',
    why: 'So thin a wall chars through, breaks off under a press or a thumb, and lets resin through.',
    mend: 'Move them apart, engrave less deep, or fill and sand the one before the other is burnt.',
    source: commonPractice,
};

export const thinWall: Rule = {
    page,
    followsDrawing: true,
    *examine(plan) {
        for (const blank of plan.blanks) {
            const { sheet } = blank.blank;
            const walls = wallsOf(plan, blank, (depth, kind) =>
                kind === 'bridge' ? leastBridge(depth, sheet) : leastWall(depth, sheet, kind),
            );
            for (const wall of walls) {
                if (wall.kind !== 'bridge') yield said(wall, blank);
                else if (walls.every((other) => !isThinner(other, wall))) yield saidOfBridge(wall, blank);
            }
        }
    },
};

/** Of the bridges that one cut makes, the thinnest is told. */
function isThinner(other: Wall, wall: Wall): boolean {
    return other.kind === 'bridge' && other.later === wall.later && other.distance < wall.distance;
}

function leftOf(distance: number): string {
    return distance < 0.01 ? phrase`the beam’s width leaves no wood` : phrase`only ${showLength(distance)} of wood is left`;
}

function saidOfBridge(wall: Wall, blank: BlankPlan): Finding {
    const { later, earlier, distance, depth } = wall;
    const alone = earlier === 'edge' || earlier === later;
    const between = alone ? phrase`Within ${later.step.name}` : phrase`Between ${later.step.name} and ${earlier.step.name}`;
    const least = roundLength(leastBridge(depth, blank.blank.sheet), 'mm', 'up');
    return finding(page, {
        severity: 'warning',
        message: phrase`${between} ${leftOf(distance)} in a board of ${showLength(depth)}: it chars through or snaps. Leave ${showLength(least)}.`,
        where: later.step.where,
        step: later.step.index,
        spots: [{ blank: blank.name, x: wall.x, y: wall.y, size: 2 }],
        related: alone ? [] : [{ message: phrase`${earlier.step.name} is cut here.`, where: earlier.step.where }],
    });
}

function said({ later: laser, earlier, distance, depth, kind, x, y }: Wall, blank: BlankPlan): Finding {
    const least = roundLength(leastWall(depth, blank.blank.sheet, kind === 'pocket' ? 'pocket' : 'rim'), 'mm', 'up');
    const beside = earlier === 'edge' ? phrase`the edge of the blank` : earlier.step.name;
    return finding(page, {
        severity: 'warning',
        message: phrase`Between ${laser.step.name} and ${beside} ${leftOf(distance)}, ${showLength(depth)} high: leave ${showLength(least)}, so move them ${showLength(roundLength(least - distance, 'mm', 'up'))} apart.`,
        where: laser.step.where,
        step: laser.step.index,
        spots: [{ blank: blank.name, x, y, size: 2 }],
        related: earlier === 'edge' ? [] : [{ message: phrase`${earlier.step.name} is burnt here.`, where: earlier.step.where }],
    });
}
