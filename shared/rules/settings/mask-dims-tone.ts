import { showNumber } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import { maskOn } from '../helpers/film-on';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** A part of the dose that the eye does not miss in a tone. @commonPractice */
const unseen = 0.15;

const page: Page = {
    id: 'mask-dims-tone',
    title: 'Tone that the mask takes',
    severities: ['warning', 'info'],
    quickFix: 'sometimes',
    condition: `A tone is burnt through a masking that says what the first pass spends on it (\`takes 0.12 J/mm2\`), and that is more than ${100 * unseen} % of the dose; a warning where nothing reaches the wood.`,
    why: 'The beam burns the film first. Of a light tone little is left for the wood: it comes out pale, in shreds of film and gum, or not at all. A deep burn hardly notices.',
    mend: 'Lower the speed, mask only where it is needed, or burn tones on the bare face and mask for the deep work alone.',
    source: 'Seen in a maker’s guide to masks under the laser: about a quarter more for what is engraved; disputed by a shop with 110 W, where it makes no difference. That is a matter of the dose, by which this rule goes; how much a film takes is the stock’s figure.',
};

export const maskDimsTone: Rule = {
    page,
    *examine(plan) {
        for (const { step, blank, laser } of plan.steps) {
            const settings = laser?.settings;
            if (step.kind !== 'engrave' || laser?.tone === undefined || settings === undefined) continue;
            const film = maskOn(plan, step, blank)?.film;
            const dose = settings.power / (settings.speed * settings.pitch);
            if (film?.takes === undefined || !(dose > 0) || film.takes.value <= unseen * dose) continue;
            const takes = film.takes.value;
            const speed = (settings.speed * dose) / (dose + takes);
            const nothing = takes >= dose;
            yield finding(page, {
                severity: nothing ? 'warning' : 'info',
                message: phrase`${film.name} takes ${shown(takes)} of the ${shown(dose)} that ${step.name} gives${nothing ? phrase`: the beam does not reach the wood` : phrase`, and the tone comes out paler`}. At ${showNumber(speed, 0)} mm/s in place of ${showNumber(settings.speed, 0)} both get theirs.`,
                where: step.tone?.where ?? step.where,
                step: step.index,
                related: [{ message: phrase`What the masking takes is written here.`, where: film.takes.where }],
                fixes: slower(step, speed),
            });
        }
    },
};

function shown(dose: number): string {
    return `${showNumber(dose, 2)} J/mm2`;
}

function slower({ speed }: Engrave, value: number): Fix[] {
    if (speed === undefined) return [];
    const text = `${showNumber(value, 0)} mm/s`;
    return [{ title: phrase`Burn it at ${text}`, changes: [{ do: 'replace', where: speed.where, text }] }];
}
