import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { fileName } from '../../shared/sheets/escape';
import { allFindings, shortPath } from './all-findings';
import { plural } from './formats/check-report';
import { openFiles, UsageError } from './open-files';
import { startOf } from './start-of';

/** `kerfbook build`: the files for machine and bench, into `made/<recipe>` beside each recipe or below --out. 1 if anything of it is not written. */
export async function build(args: string[]): Promise<number> {
    const { values, positionals } = parseArgs({
        args,
        allowPositionals: true,
        options: {
            recipe: { type: 'string' },
            out: { type: 'string' },
            force: { type: 'boolean', default: false },
            start: { type: 'string' },
        },
    });
    const start = startOf(values.start);
    const { workshop, documents } = await openFiles(positionals);
    let written = 0;
    let held = 0;
    let problems = 0;
    for (const document of documents) {
        const recipes = workshop
            .recipes(document)
            .filter((recipe) => values.recipe === undefined || recipe.name === values.recipe);
        if (recipes.length === 0) continue;
        const errors = (await allFindings(workshop, document)).filter(({ finding }) => finding.severity === 'error');
        if (errors.length > 0 && !values.force) {
            const first = errors[0]!;
            process.stderr.write(
                `${shortPath(document)}: ${plural(errors.length, 'error')} open, nothing written (--force writes all the same). First: ${first.file}:${first.line}: ${first.finding.message}\n`,
            );
            held += 1;
            continue;
        }
        const textFindings = workshop.textFindings(document);
        for (const recipe of recipes) {
            const beside = path.join(path.dirname(shortPath(document)), 'made');
            const folder = path.resolve(values.out ?? beside, fileName(recipe.name));
            const sheets = await workshop.ask({ do: 'build', recipe, textFindings, ...start });
            problems += sheets.problems.length;
            for (const problem of sheets.problems) process.stderr.write(`${problem}\n`);
            for (const file of sheets.files) {
                const target = path.join(folder, ...file.path.split('/'));
                await mkdir(path.dirname(target), { recursive: true });
                await writeFile(target, file.text);
                process.stdout.write(`${path.relative(process.cwd(), target)}  (${file.note})\n`);
                written += 1;
            }
        }
    }
    if (written === 0 && held === 0) throw new UsageError('There is no recipe to build.');
    return held + problems > 0 ? 1 : 0;
}
