import { rangeMeaning } from '../../burn/interval-words';
import { spread } from '../../quantity/interval';
import { fromBase, type Quantity } from '../../quantity/quantity';
import { showLength, showLengthInterval } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { settleBySquare } from '../helpers/settle-by-square';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'depth-promise',
    title: 'A depth promised closer than it can be kept',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'A depth is asked for with a tolerance or as a range, and the coupon does not keep the depth within it: the interval expected for the settings reaches further.',
    why: 'The tolerance is a promise to whoever fits the other half. A piece that comes out of it is still burnt, and does not fit.',
    mend: 'Burn a coupon with more squares near this depth, so that its interval gets narrower; or promise what can be kept.',
    source: 'The interval of the depth law, fitted to the coupon (95 %).',
};

export const depthPromise: Rule = {
    page,
    *examine(plan) {
        for (const { step, laser } of plan.steps) {
            const { depth: wanted } = step.kind === 'engrave' ? step : {};
            const settings = laser?.settings;
            if (wanted === undefined || 'through' in wanted || wanted.tolerance === 0 || laser?.depth === undefined) continue;
            if (settings === undefined || !settings.reached || settings.guess) continue; // other rules say it
            const [from, to] = [wanted.value - wanted.tolerance, wanted.value + wanted.tolerance];
            const { depth } = laser;
            if (depth.low >= from - rounding && depth.high <= to + rounding) continue;
            const { unit, where } = wanted;
            const settled = settleBySquare(plan, laser);
            const half = Number(fromBase(wanted.tolerance, unit).toPrecision(3));
            yield finding(page, {
                severity: 'warning',
                message: phrase`${laser.step.name} is promised ${showLength(wanted.value, unit)} ± ${half} ${unit} deep; it comes to ${showLengthInterval(depth, unit)}${settings.givesFor === undefined ? '' : ` (${rangeMeaning(settings.givesFor)})`}.${settled.words}`,
                where,
                step: step.index,
                fixes: [
                    keep(wanted.value, Math.max(spread(depth), Math.abs(depth.value - wanted.value)), wanted),
                    ...settled.fixes,
                ],
            });
        }
    },
};

/** Less than can be written, mm. */
const rounding = 1e-6;

/** The same depth with a tolerance that holds, rounded up to hundredths of a millimetre. */
function keep(value: number, half: number, { where }: Quantity): Fix {
    const wide = Math.ceil(half * 100 - 1e-9) / 100;
    const text = `${Number(value.toFixed(4))} mm +- ${wide.toFixed(2)} mm`;
    return { title: phrase`Promise ${text.replace('+-', '±')}`, changes: [{ do: 'replace', where, text }] };
}
