import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { URI, UriUtils } from 'langium';
import type { MachinePoint } from '../../shared/plan/laid-piece';
import { buildJob } from '../writing/build-files';
import { placeOfRecipe } from '../writing/made-of';
import { allFindings, shortPath } from './all-findings';
import { openFiles } from './open-files';
import { complain } from './say';
import { readArgs } from './usage/read-args';
import { layUsage } from './usage/reference-usages';
import { UsageError } from './usage-error';
import { writeHere } from './write-here';

/** `kerfbook lay`: the files of one set-up, moved and turned for the piece on the bed, beside those of the recipe. 1 if they are not written. */
export async function lay(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(layUsage, args);
    const setUp = Number(values['set-up']);
    if (!Number.isInteger(setUp) || setUp < 1)
        throw new UsageError('--set-up is the number of a set-up on the job sheet, such as 2.');
    const measured = readMarks(values.marks);
    const { workshop, documents, files } = await openFiles(positionals);
    const found = documents.flatMap((document) =>
        workshop
            .recipes(document)
            .filter(({ name }) => values.recipe === undefined || name === values.recipe)
            .map((recipe) => ({ document, recipe })),
    );
    const [only] = found;
    if (only === undefined || found.length > 1)
        throw new UsageError(
            `A piece is of one recipe, and these files have ${found.length}: name its file, or say --recipe NAME.`,
        );
    const { document, recipe } = only;
    const error = (await allFindings(workshop, document)).find(({ finding }) => finding.severity === 'error');
    if (error !== undefined && !values.force) {
        complain(
            `${shortPath(document)}: an error is open, nothing written (--force writes all the same): ${error.finding.message}`,
        );
        return 1;
    }
    const laid = { setUp, measured, anyway: values.anyway };
    const sheets = await workshop.ask({ ...buildJob(workshop, document, recipe), laid });
    for (const problem of sheets.problems) complain(problem);
    if (sheets.files.length === 0) return 1;
    const out = values.out === undefined ? undefined : URI.parse(pathToFileURL(path.resolve(values.out)).toString());
    const { folder, owner } = placeOfRecipe(document, recipe.name, out);
    const below = UriUtils.joinPath(folder, `laid-${setUp}`);
    const place = { folder: below, owner: { of: owner.of, from: UriUtils.relative(below, document.uri) } };
    await writeHere(place, sheets.files, { files, out: values.out }, { force: values.force });
    return sheets.problems.length > 0 ? 1 : 0;
}

/** `10.2,40.1 - 90.3,39.8`: places in mm from X 0 Y 0, in the order of the job sheet. @throws UsageError */
export function readMarks(written: string | undefined): (MachinePoint | null)[] {
    const words = (written ?? '')
        .trim()
        .split(/\s+/)
        .filter((word) => word !== '');
    if (words.length < 2) throw new UsageError('--marks are at least two places in mm, such as --marks "10.2,40.1 90.3,39.8".');
    return words.map((word) => {
        if (word === '-') return null;
        const [x, y, ...more] = word
            .split(',')
            .map((part) => (/^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(part) ? Number(part) : Number.NaN));
        if (
            x === undefined ||
            y === undefined ||
            more.length > 0 ||
            !Number.isFinite(x) ||
            !Number.isFinite(y) ||
            Math.abs(x) > 1e5 ||
            Math.abs(y) > 1e5
        )
            throw new UsageError(
                `"${word}" is no place: X and Y in mm with a comma between them, such as 10.2,40.1, or - for a mark that was not measured.`,
            );
        return { x, y };
    });
}
