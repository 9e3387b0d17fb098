import { diameterAt, focusSteps, type Spot, spotOf } from '../../burn/beam';
import type { LaserPlan } from '../../plan/laser-plan';
import { refocusings } from '../../plan/plan-focus';
import { showLength, showNumber } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import type { Recipe } from '../../recipe/recipe';
import type { Engrave } from '../../recipe/step';
import type { Laser } from '../../recipe/stock';
import { atItsWord, type Figures } from '../figures';
import { askPasses } from '../helpers/ask-passes';
import type { Page } from '../page';
import { finding, type Rule, type Said } from '../rule';

const page: Page = {
    id: 'out-of-focus',
    title: 'The floor drops out of focus',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition:
        'A pocket is deeper than the Rayleigh range of the laser’s focus, and the focus cannot follow the floor: it is fixed, the passes are too few, or nobody has said what lowers it.',
    why: 'Down there the beam has spread over twice the area: its intensity is halved, walls lean more, detail blurs, and more of the energy only heats the wood.',
    mend: 'Write `focus driven` or `focus by-hand` in the laser’s block: the machine file then lowers the focus between passes, or stops for you to do it. Take at least as many passes as the focus has steps. Else use a lens of longer focal length.',
    source: 'Gaussian optics: the Rayleigh range is π·w₀²/(M²·λ), and w(z) = w₀·√(1 + (z/z_R)²) (Siegman, Lasers, 1986; from memory).',
};

export const outOfFocus: Rule = {
    page,
    *examine({ recipe, steps }, figures = atItsWord) {
        const spot = spotOf(recipe.laser);
        if (spot?.rayleigh === undefined || recipe.laser === undefined) return;
        for (const { step, laser } of steps) {
            if (step.kind !== 'engrave' || laser?.depth === undefined || laser.tone !== undefined) continue;
            if (focusSteps(spot, laser.depth.value) < 2) continue;
            const said = blurred(step, laser, spot, recipe.laser, figures) ?? unsaid(step, laser, recipe);
            if (said === undefined) continue;
            const { depth } = laser;
            const growth = showNumber(diameterAt(spot, depth.value) / spot.diameter, 1);
            const wide = phrase`At ${showLength(depth.value)} the spot is ${growth} times as wide (the focus reaches ${showLength(spot.rayleigh)})`;
            yield finding(page, { ...said, message: phrase`${wide}: ${said.message}`, step: step.index });
        }
    },
};

/** What keeps the focus from following the floor. */
function blurred(
    step: Engrave,
    { settings, depth, goesOn }: LaserPlan,
    spot: Spot,
    machine: Laser,
    figures: Figures,
): Said | undefined {
    if (machine.focus?.value === 'fixed') {
        return {
            severity: 'warning',
            message: phrase`the focus of ${machine.name} is fixed, so walls lean and detail blurs down there.`,
            where: step.depth?.where ?? step.where,
            related: [{ message: phrase`The focus is said to be fixed here.`, where: machine.focus.where }],
        };
    }
    const steps = focusSteps(spot, depth?.value ?? 0);
    if (settings === undefined || (goesOn?.whole.passes ?? settings.passes) >= steps) return undefined;
    return {
        severity: 'warning',
        message: phrase`it should be lowered ${times(steps - 1)} between passes, and there ${settings.passes === 1 ? phrase`is one pass` : phrase`are ${settings.passes}`}.`,
        where: step.passes?.where ?? step.where,
        fixes: askPasses(page.id, step, steps, figures).fixes,
    };
}

/** The machine file moves the focus, and nobody has said that the machine can. */
function unsaid(step: Engrave, { focus }: LaserPlan, { laser, steps }: Recipe): Said | undefined {
    const changes = refocusings(focus);
    const told = steps.some((other) => other.kind === 'do' && /focus/i.test(other.text));
    if (laser === undefined || laser.focus !== undefined || told || changes.length === 0) return undefined;
    const say = (word: string, title: Message): Fix[] =>
        laser.whole === undefined ? [] : [{ title, changes: [{ do: 'add', block: laser.whole, statement: `focus ${word}` }] }];
    const before =
        changes.length === 1 ? phrase`before pass ${changes[0]!.pass}` : phrase`${times(changes.length)} between passes`;
    return {
        severity: 'info',
        message: phrase`the machine file lowers it ${before}, if ${laser.name} can.`,
        where: step.depth?.where ?? step.where,
        related: [{ message: phrase`Nothing is said of its focus here.`, where: laser.where }],
        fixes: [
            ...say('driven', phrase`${laser.name} moves its focus by itself`),
            ...say('by-hand', phrase`The focus of ${laser.name} is lowered by hand`),
        ],
    };
}

function times(count: number): string {
    return count === 1 ? 'once' : phrase`${count} times`;
}
