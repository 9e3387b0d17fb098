import { outputOf } from '../burn/output';
import { leastPowerOf } from '../burn/power-curve';
import type { Region } from '../geometry/region';
import { followsOutline } from '../recipe/follows-outline';
import type { Cut, Engrave } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import { cutPaths } from '../toolpath/cut';
import { hatchOfDots } from '../toolpath/dots';
import { type Hatch, hatch } from '../toolpath/hatch';
import { withEvenEnergy } from '../toolpath/held-speed';
import type { Work } from '../toolpath/job';
import type { Motion } from '../toolpath/motion';
import { outlinePaths } from '../toolpath/outline';
import type { Path } from '../toolpath/path';
import { contentKey } from './content-key';
import type { DottedPicture, LaserPlan, LaserSettings, OutlineSettings } from './laser-plan';
import type { Memo } from './memo';

/** Where a laser does not say how it moves: a middling gantry. @commonPractice */
const usualMotion: Motion = { topSpeed: 300, acceleration: 3000 };

export function motionOf(laser: Laser | undefined): Motion {
    return {
        topSpeed: laser?.topSpeed?.value ?? usualMotion.topSpeed,
        acceleration: laser?.acceleration?.value ?? usualMotion.acceleration,
    };
}

/** What one laser step asks of the machine; lengths mm, angles rad. */
export interface Burning {
    readonly step: Engrave | Cut;
    /** What the machine file calls it; the step's name when absent. */
    readonly name?: string;
    readonly region: Region;
    /** Burnt as dots besides. */
    readonly pictures?: readonly DottedPicture[];
    readonly scanAngle: number;
    readonly outlinePasses: number;
    readonly outline?: OutlineSettings | undefined;
    readonly focus: readonly number[] | undefined;
    readonly settings: LaserSettings | undefined;
    readonly laser: Laser | undefined;
}

/** All that the machine burns for a step: its own work, then the marks of its inlays. */
export function burningsOf(plan: LaserPlan, laser: Laser | undefined): Burning[] {
    const { step, scanAngle, outlinePasses, outline, focus, settings, pictures = [] } = plan;
    return [
        {
            step,
            region: plan.cutLine?.followed ?? plan.line ?? plan.whole ?? plan.region,
            pictures,
            scanAngle,
            outlinePasses,
            outline,
            focus,
            settings,
            laser,
        },
        ...(plan.marks ?? []).map((marks) => ({
            step,
            name: `marks of ${step.name}`,
            region: marks.region,
            scanAngle,
            outlinePasses: 0,
            focus: undefined,
            settings: marks.settings,
            laser,
        })),
    ];
}

/** The paths along the edge: of a cut with its tabs and lead-ins. */
export function outlineOf({ region, step }: Pick<Burning, 'region' | 'step'>, memo: Memo): readonly Path[] {
    const options = step.kind === 'cut' ? { tabs: step.tabs?.value ?? 0, leadIn: step.leadIn?.value ?? 0 } : undefined;
    return memo.get('outline', contentKey(memo.keyOf(region), options), () =>
        options === undefined ? outlinePaths(region) : cutPaths(region, options),
    );
}

/**
 * Paths on which the power goes with the speed that the head has, down to the least that the laser holds: by steps in the file, or by
 * the machine itself where it does that.
 */
export function evenPaths(
    paths: readonly Path[],
    { power, speed }: Pick<LaserSettings, 'power' | 'speed'>,
    laser: Laser | undefined,
    memo: Memo,
): readonly Path[] {
    if (outputOf(laser).followsSpeed) return paths;
    const { acceleration } = motionOf(laser);
    const least = Math.min(1, (leastPowerOf(laser) ?? 0) / power);
    return memo.get('even-outline', contentKey(memo.keyOf(paths), speed, acceleration, least), () =>
        paths.map((path) => withEvenEnergy(path, speed, acceleration, least)),
    );
}

/** The machine's work for a step: area passes first, then its outline. Made when somebody needs it, and kept. */
export function toolpaths(burning: Burning, memo: Memo): Work[] {
    const { settings, step, region } = burning;
    if (settings === undefined) return [];
    const key = memo.keyOf(region);
    const air = (step.air?.value ?? (step.kind === 'cut' ? 'on' : 'off')) === 'on';
    const burnt = { power: settings.power, speed: settings.speed, air };
    const work: Work[] = [];
    if (step.kind === 'engrave' && !followsOutline(step)) {
        const pictures = burning.pictures ?? [];
        const lines: Hatch | undefined = memo.get('hatch', `${key} ${settings.pitch} ${burning.scanAngle}`, () =>
            hatch(region, settings.pitch, burning.scanAngle),
        );
        const overtravel = burning.laser?.overtravel?.value;
        const area = (made: Hatch, name: string): Work => ({
            kind: 'area',
            name,
            ...burnt,
            passes: settings.passes,
            hatch: made,
            bothWays: step.scan?.bothWays ?? true,
            ...(overtravel === undefined ? {} : { overtravel }),
            ...(burning.focus === undefined ? {} : { focus: burning.focus }),
        });
        const name = burning.name ?? step.name;
        // A step of nothing but pictures has no area of its own to name.
        if (lines !== undefined && (lines.segments > 0 || pictures.length === 0)) work.push(area(lines, name));
        for (const { grid, artName } of pictures) {
            const made = memo.get('dotted-lines', memo.keyOf(grid), () => hatchOfDots(grid));
            work.push(area(made, `${name}, ${artName} in dots`));
        }
    }
    if (burning.outlinePasses > 0) work.push(pathWork(burning, settings, air, memo));
    return work;
}

/** A cut keeps its power, so that corners come through too; what is engraved along an outline gets the same dose everywhere. */
function pathWork(burning: Burning, settings: LaserSettings, air: boolean, memo: Memo): Work {
    const { step, laser, outlinePasses } = burning;
    const name = burning.name ?? step.name;
    const paths = outlineOf(burning, memo);
    if (step.kind === 'cut')
        return { kind: 'path', name, power: settings.power, speed: settings.speed, air, passes: outlinePasses, paths };
    const isLine = followsOutline(step);
    const { power, speed, passes } = (isLine ? undefined : burning.outline) ?? { ...settings, passes: outlinePasses };
    const even = evenPaths(paths, { power, speed }, laser, memo);
    return { kind: 'path', name: isLine ? name : `${name} outline`, power, speed, air, passes, paths: even };
}
