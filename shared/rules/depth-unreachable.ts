import type { LaserSettings } from '../plan/laser-plan';
import { showLength, showLengthInterval, showNumber } from '../quantity/show';
import type { Where } from '../quantity/where';
import type { Fix } from '../recipe/finding';
import type { Engrave } from '../recipe/step';
import type { Page } from './page';
import { finding, type Rule } from './rule';
import { settingsHeld } from './settings-held';

const page: Page = {
    id: 'depth-unreachable',
    title: 'Depth out of reach',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: 'No settings within the machine’s limits, and with what is written, give the depth that is asked for.',
    why: 'The pocket comes out at another depth than everything after it reckons with.',
    mend: 'Take out what is written of power, speed, pitch or passes, so that it can be worked out; ask for another depth; or use a stronger laser.',
    source: 'The depth law, fitted to the coupon: d = (F − F₀)/q for each pass, with F = P/(v · pitch).',
};

/** What is written holds it back; without, there may be settings that reach it. */
function solvedAnew({ settingsWhere }: Engrave, held: boolean): Fix[] {
    if (!held) return [];
    return [{ title: 'Solve anew', preferred: true, changes: settingsWhere.map((where) => ({ do: 'remove', where })) }];
}

function shallower(where: Where, { gives, guess }: LaserSettings): Fix[] {
    if (guess || gives.value < 0.02) return [];
    const text = `${showNumber(gives.value, 2)} mm`;
    return [{ title: `Ask for ${text}`, changes: [{ do: 'replace', where, text }] }];
}

export const depthUnreachable: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || step.depth === undefined || settings === undefined || settings.reached) continue;
            if (settingsHeld(step)) continue; // settings-miss-depth says it
            const through = 'through' in step.depth;
            const wanted = through ? laser?.depth?.value : 'value' in step.depth ? step.depth.value : undefined;
            // More than through is still through.
            if (wanted === undefined || (through && settings.gives.value >= wanted)) continue;
            const written = [
                step.power === undefined ? '' : 'power',
                step.speed === undefined ? '' : 'speed',
                step.pitch === undefined ? '' : 'pitch',
                step.passes === undefined ? '' : 'passes',
            ].filter((word) => word !== '');
            const held =
                written.length === 0
                    ? ''
                    : ` with the ${written.join(' and ')} that ${written.length === 1 && written[0] !== 'passes' ? 'is' : 'are'} written`;
            yield finding(page, {
                severity: settings.guess ? 'info' : 'warning',
                message: `${step.name} cannot be ${through ? `burnt through ${showLength(wanted)}` : `${showLength(wanted)} deep`}${held}: it comes to ${showLengthInterval(settings.gives)}${settings.guess ? ' (a guess: no coupon)' : ''}.`,
                where: step.depth.where,
                step: step.index,
                fixes: [...solvedAnew(step, written.length > 0), ...(through ? [] : shallower(step.depth.where, settings))],
            });
        }
    },
};
