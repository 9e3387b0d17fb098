import { readingOf } from '../../burn/fit-problem';
import { type LawRow, measuringError } from '../../burn/law';
import { settingFor } from '../../burn/power-curve';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Laser } from '../../recipe/stock';
import { addSquare, type Square } from '../helpers/settle-by-square';
import { settingsOf } from '../helpers/square-of';
import type { Page } from '../page';
import { finding } from '../rule';
import type { CouponRule } from './coupon-rule';

/** Two readings of one depth differ by more than so many standard errors of their difference once in 370 times. */
const ERRORS_APART = 3;

const page: Page = {
    id: 'squares-disagree',
    title: 'Squares burnt alike that came out unlike',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition:
        'Two squares were burnt with the same power, speed and passes, and the deeper one is deeper by more than three times what two readings of one depth usually differ by (0.02 mm and 5 % of the depth each, or the tolerance that is written).',
    why: 'One of them is wrong, and nobody can tell which: a slip of the gauge, a row written beside the wrong square, a board that is not alike all over, or a laser that was warmer. The line runs between them and fits neither, with wide ranges.',
    mend: 'Measure both squares again. If both hold, burn a third with the same settings: it says which of them the wood meant.',
    source: 'Own choice: three standard errors of a difference, as in the rule for outliers. The usual error of a gauge is common practice, no source.',
};

export const squaresDisagree: CouponRule = {
    page,
    *examine({ coupon, law, rows, laser }) {
        const told = new Set<string>();
        for (const [index, row] of law.rows.entries()) {
            const other = law.rows.find((each, at) => at < index && isTwin(each, row) && areApart(each, row));
            const where = rows[index]?.where;
            const key = `${row.power} ${row.speed} ${row.pitch} ${row.passes}`;
            if (other === undefined || where === undefined || told.has(key)) continue;
            told.add(key);
            const otherWhere = rows[law.rows.indexOf(other)]?.where;
            const unit = coupon.burns.find((burn) => burn.where.offset === where.offset)?.depth.unit;
            const third = asSet(row, laser);
            yield finding(page, {
                severity: 'warning',
                message: phrase`Burnt with the same settings, this square is ${showLength(row.depth, unit)} deep and another ${showLength(other.depth, unit)}. Measure both again, or burn a third with ${settingsOf(third)}: it says which of them the wood meant.`,
                where,
                fixes: addSquare(coupon, third),
                related: otherWhere === undefined ? [] : [{ message: phrase`The other square is here.`, where: otherWhere }],
            });
        }
    },
};

/** A square's power as a setting of the laser's own, where that is known. */
export function asSet({ power, speed, passes }: LawRow, laser: Laser): Square {
    const powerRatio = settingFor(laser, power);
    return { power, speed, passes, ...(powerRatio !== undefined && { powerRatio }) };
}

function isTwin(one: LawRow, other: LawRow): boolean {
    return (['power', 'speed', 'pitch', 'passes'] as const).every((key) => one[key] === other[key]);
}

function areApart(one: LawRow, other: LawRow): boolean {
    const usual = (row: LawRow): number => measuringError(row.depth, readingOf(row));
    return Math.abs(one.depth - other.depth) > ERRORS_APART * Math.hypot(usual(one), usual(other));
}
