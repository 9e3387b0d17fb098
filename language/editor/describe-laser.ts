import { focusSteps, spotOf } from '../../shared/burn/beam';
import { outputOf, outputWords } from '../../shared/burn/output';
import { leastPowerOf, settingFor, wattsAt } from '../../shared/burn/power-curve';
import { originSentence } from '../../shared/plan/origin';
import { showLength, showNumber, showRatio } from '../../shared/quantity/show';
import type { Laser } from '../../shared/recipe/stock';
import { runUp } from '../../shared/toolpath/motion';
import type * as ast from '../generated/ast';
import { laserOf } from '../lowering/stock';

/** What follows from a laser's figures: its spot and how far the focus reaches, its power curve, its run-up, its zero. Markdown. */
export function describeLaser(node: ast.Laser): string {
    const laser = laserOf(node);
    return [
        ...optics(laser),
        ...powers(laser),
        ...motion(laser),
        `in machine files ${originSentence(laser)}`,
        `they switch on with ${outputWords(outputOf(laser))}`,
    ]
        .map((line) => `- ${line}`)
        .join('\n');
}

function optics(laser: Laser): string[] {
    const spot = spotOf(laser);
    if (spot === undefined) return ['spot: not known (write `spot`, or `lens` and `aperture`)'];
    const quality = `M² ${showNumber(spot.quality, 2)}${spot.qualityAssumed ? ', a usual value' : ''}`;
    const lines = [`spot: ${showLength(spot.diameter)}${spot.from === 'lens' ? ' by its lens' : ''} (${quality})`];
    if (spot.rayleigh === undefined) return lines;
    const deep = 2;
    const steps = focusSteps(spot, deep);
    const follow = laser.focus?.value === 'fixed' ? 'fixed' : `${steps} height${steps === 1 ? '' : 's'} for ${deep} mm`;
    return [...lines, `focus reaches (Rayleigh range): ${showLength(spot.rayleigh)}; ${follow}`];
}

function powers(laser: Laser): string[] {
    const half = wattsAt(laser, 0.5);
    const least = leastPowerOf(laser);
    const lines: string[] = [];
    if (half !== undefined && laser.setpoints !== undefined) lines.push(`half of the setting gives ${showNumber(half, 1)} W`);
    if (half !== undefined && least !== undefined) {
        lines.push(`least power: ${showNumber(least, 2)} W, a setting of ${showRatio(settingFor(laser, least) ?? 0)}`);
    }
    return lines;
}

function motion({ topSpeed, acceleration }: Laser): string[] {
    if (topSpeed === undefined || acceleration === undefined) return [];
    return [`run-up to its top speed: ${showLength(runUp(topSpeed.value, acceleration.value))}`];
}
