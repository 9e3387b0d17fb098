import { lowerCoupons } from '../../language/lowering/coupons';
import { showLength, showNumber } from '../../shared/quantity/show';
import { plainJson } from '../../shared/review/one-line';
import type { CurveDocument } from './formats/documents';
import { openFiles } from './open-files';
import { say } from './say';
import { readArgs } from './usage/read-args';
import { curveUsage } from './usage/reference-usages';
import { UsageError } from './usage-error';

/** `kerfbook curve`: what a coupon's squares say, as facts and as the depth by dose with its range. */
export async function curve(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(curveUsage, args);
    const [board, laser, ...names] = positionals;
    if (board === undefined || laser === undefined) throw new UsageError('Say for which board or veneer, and for which laser.');
    const { workshop, documents } = await openFiles(names);
    const known = workshop.services.shared.workspace.LangiumDocuments.all.toArray();
    const measured = [...new Set([...documents, ...known])]
        .flatMap(lowerCoupons)
        .find(({ coupon }) => coupon.sheet === board && coupon.laser === laser);
    if (measured === undefined) throw new UsageError(`These files have no coupon of ${board} on ${laser}.`);
    const fit = await workshop.ask({ do: 'fit', coupon: measured });
    if (values.format === 'json') {
        say(`${plainJson({ schema: 1, board, laser, ...fit } satisfies CurveDocument)}\n`);
        return 0;
    }
    const facts = fit.facts.map(({ label, value }) => `${label}: ${value}\n`);
    const rows = fit.curve.map(
        ({ dose, depth, low, high }) =>
            `${showNumber(dose, 2)} J/mm²: ${showLength(depth)} (${showLength(low)} to ${showLength(high)})\n`,
    );
    say([...facts, ...fit.notes.map((note) => `${note}\n`), '\n', 'one pass, one more square\n', ...rows].join(''));
    return 0;
}
