import { usableSetpoints } from '../../burn/power-curve';
import { showNumber, showRatio } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'power-curve-falls',
    title: 'A power curve that does not rise',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'A `set` line of the recipe’s laser gives no more power than a lower setting, or as much as the laser has at 100 %, or has a setting of 0 or 100 %.',
    why: 'No setting could then be told from a power. The line is left out, and the curve goes straight over it.',
    mend: 'Measure it again with the power meter warm, or take the line out.',
    source: 'Plain comparison of the lines.',
};

export const powerCurveFalls: Rule = {
    page,
    *examine({ recipe: { laser } }) {
        const used = usableSetpoints(laser);
        for (const point of laser?.setpoints ?? []) {
            if (used.includes(point)) continue;
            yield finding(page, {
                severity: 'warning',
                message: phrase`${showRatio(point.setting.value)} giving ${showNumber(point.gives.value, 2)} W does not lie between the settings and powers beside it: it is left out.`,
                where: point.where,
                fixes: [{ title: phrase`Take the line out`, changes: [{ do: 'remove', where: point.where }] }],
            });
        }
    },
};
