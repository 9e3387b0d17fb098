import { Repository } from '../git/repository';
import { notesOf } from '../report/notes-of';
import { inAllFiles, type PlacedFinding } from '../report/placed-finding';
import { allFindings, shortPath } from './all-findings';
import { annotationsReport } from './formats/annotations';
import { type CheckReport, fails } from './formats/check-report';
import { checkstyleReport } from './formats/checkstyle';
import { jsonReport } from './formats/json';
import { junitReport } from './formats/junit';
import { markdownReport } from './formats/markdown';
import { sarifReport } from './formats/sarif';
import { textReport } from './formats/text';
import { openFiles } from './open-files';
import { say, sayCommands } from './say';
import { touchedSince } from './since';
import type { ChoiceOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { checkUsage } from './usage/usages';

const formats: Readonly<Record<ChoiceOf<typeof checkUsage, 'format'>, (report: CheckReport) => string>> = {
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
    const { values, positionals } = readArgs(checkUsage, args);
    const format = formats[values.format];
    const open = await openFiles(positionals, values.as);
    const { workshop } = open;
    const documents = values.since === undefined ? open.documents : await touchedSince(values.since, open);
    const found: PlacedFinding[][] = [];
    for (const document of documents) found.push(await allFindings(workshop, document));
    const findings = inAllFiles(found);
    const told = await Promise.all(documents.map((document) => notesOf(workshop, document, shortPath)));
    const [notes, silenced] = [told.flatMap((each) => each.notes), told.flatMap((each) => each.silenced)];
    const root = values.format === 'sarif' ? await sourcesTop() : process.cwd();
    const tell = values.format === 'annotations' ? sayCommands : say;
    tell(format({ files: documents.map(shortPath), findings, silenced, notes, strict: values.strict, root }));
    return findings.some(({ finding }) => fails(finding.severity, values.strict)) ? 1 : 0;
}

/** Without a repository, or without git, sources are named from here. */
async function sourcesTop(): Promise<string> {
    const repository = await Repository.of(process.cwd()).catch(() => undefined);
    return repository?.top ?? process.cwd();
}
