import { parseArgs } from 'node:util';
import type { LangiumDocument } from 'langium';
import type { ReviewNotes } from '../../shared/review/notes';
import { Repository } from '../git/repository';
import type { Workshop } from '../workshop/workshop';
import { allFindings, type PlacedFinding, type PlacedSilenced, placedSilenced, shortPath } from './all-findings';
import { annotationsReport } from './formats/annotations';
import { type CheckReport, fails } from './formats/check-report';
import { checkstyleReport } from './formats/checkstyle';
import { jsonReport } from './formats/json';
import { junitReport } from './formats/junit';
import { markdownReport } from './formats/markdown';
import { sarifReport } from './formats/sarif';
import { textReport } from './formats/text';
import { openFiles, UsageError } from './open-files';
import { touchedSince } from './since';

const formats: Readonly<Record<string, (report: CheckReport) => string>> = {
    text: textReport,
    json: jsonReport,
    sarif: sarifReport,
    junit: junitReport,
    markdown: markdownReport,
    annotations: annotationsReport,
    checkstyle: checkstyleReport,
};

/** `kerfbook check`: the same findings as in the editor. Exit code 1 when there is an error, or with --strict a warning. */
export async function check(args: string[]): Promise<number> {
    const { values, positionals } = parseArgs({
        args,
        allowPositionals: true,
        options: {
            format: { type: 'string', default: 'text' },
            strict: { type: 'boolean', default: false },
            since: { type: 'string' },
        },
    });
    const format = formats[values.format];
    if (format === undefined) throw new UsageError(`--format is one of ${Object.keys(formats).join(', ')}.`);
    const open = await openFiles(positionals);
    const { workshop } = open;
    const documents = values.since === undefined ? open.documents : await touchedSince(values.since, open);
    const findings: PlacedFinding[] = [];
    for (const document of documents) findings.push(...(await allFindings(workshop, document)));
    const told = await Promise.all(documents.map((document) => notesOf(workshop, document)));
    const [notes, silenced] = [told.flatMap((each) => each.notes), told.flatMap((each) => each.silenced)];
    const root = values.format === 'sarif' ? await sourcesTop() : process.cwd();
    process.stdout.write(format({ files: documents.map(shortPath), findings, silenced, notes, strict: values.strict, root }));
    return findings.some(({ finding }) => fails(finding.severity, values.strict)) ? 1 : 0;
}

/** What a reviewer should see of a file besides its findings. */
interface FileNotes {
    readonly notes: readonly (ReviewNotes & { readonly file: string })[];
    readonly silenced: readonly PlacedSilenced[];
}

async function notesOf(workshop: Workshop, document: LangiumDocument): Promise<FileNotes> {
    const notes: (ReviewNotes & { file: string })[] = [];
    const silenced: PlacedSilenced[] = [];
    for (const recipe of workshop.recipes(document)) {
        // A recipe that could not be worked out has said so among the findings.
        const answer = await workshop.ask({ do: 'notes', recipe }).catch(() => undefined);
        if (answer === undefined) continue;
        notes.push({ file: shortPath(document), ...answer.notes });
        silenced.push(...placedSilenced(workshop, document, answer.silenced));
    }
    return { notes, silenced };
}

/** Without a repository, or without git, sources are named from here. */
async function sourcesTop(): Promise<string> {
    const repository = await Repository.of(process.cwd()).catch(() => undefined);
    return repository?.top ?? process.cwd();
}
