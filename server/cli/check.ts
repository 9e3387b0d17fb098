import type { Severity } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { oneLine } from '../../shared/review/one-line';
import { Repository, staged as stagedIndex } from '../git/repository';
import { notesOf } from '../report/notes-of';
import { inAllFiles, type PlacedFinding } from '../report/placed-finding';
import { allPages } from '../rule-pages';
import type { OpenFiles } from '../workshop/open-workshop';
import { allFindings, shortPath } from './all-findings';
import { AT_ONCE } from './asker-for';
import { annotationsReport } from './formats/annotations';
import { byCause, othersOf } from './formats/by-cause';
import { type CheckReport, type Failing, failingOnErrors, failingOnWarnings, fails } from './formats/check-report';
import { checkstyleReport } from './formats/checkstyle';
import { jsonReport } from './formats/json';
import { junitReport } from './formats/junit';
import { markdownReport } from './formats/markdown';
import { sarifReport } from './formats/sarif';
import { asText, findingLines } from './formats/text';
import { openFiles } from './open-files';
import { say, sayCommands } from './say';
import { severalAtOnce } from './several-at-once';
import { changesIn, repositoryHere, touchedBy } from './since';
import { standardInput } from './standard-input';
import type { ChoiceOf, ValuesOf } from './usage/command-usage';
import { readArgs } from './usage/read-args';
import { checkUsage } from './usage/usages';
import { UsageError } from './usage-error';

const formats: Readonly<Record<ChoiceOf<typeof checkUsage, 'format'>, (report: CheckReport) => string>> = {
    text: (report) =>
        asText(
            report,
            byCause(report.findings).map((group) => [
                ...findingLines(group[0]),
                ...othersOf(group).map((line) => `    ${oneLine(line)}`),
            ]),
        ),
    json: jsonReport,
    sarif: sarifReport,
    junit: junitReport,
    markdown: markdownReport,
    annotations: annotationsReport,
    checkstyle: checkstyleReport,
};

/** `kerfbook check`: the same findings as in the editor. Exit code 1 when something fails it: an error, or what was asked for. */
export async function check(args: string[]): Promise<number> {
    const { values, positionals } = readArgs(checkUsage, args);
    const format = formats[values.format];
    const failing = failingBy(values);
    const { workshop, documents, gained } = await toBeChecked(values, positionals);
    const found = await severalAtOnce(documents, AT_ONCE, (document) => allFindings(workshop, document));
    const findings = await gained(inAllFiles(found));
    const told = await Promise.all(documents.map((document) => notesOf(workshop, document, shortPath)));
    const [notes, silenced] = [told.flatMap((each) => each.notes), told.flatMap((each) => each.silenced)];
    const root = values.format === 'sarif' ? await sourcesTop() : process.cwd();
    const tell = values.format === 'annotations' ? sayCommands : say;
    tell(format({ files: documents.map(shortPath), findings, silenced, notes, failing, root }));
    return findings.some(({ finding }) => fails(finding, failing)) ? 1 : 0;
}

type Values = ValuesOf<typeof checkUsage>;

function failingBy({ strict, 'fail-on': failOn, allow }: Values): Failing {
    const usual = strict ? failingOnWarnings : failingOnErrors;
    const on = failOn === undefined ? usual.on : new Set([...(strict ? usual.on : []), ...listOf('fail-on', failOn, true)]);
    return { on, allowed: new Set(allow === undefined ? [] : listOf('allow', allow, false)) };
}

const severities: readonly Severity[] = ['error', 'warning', 'info', 'hint'];

function listOf(option: string, list: string, withSeverities: boolean): string[] {
    const known = [...(withSeverities ? severities : []), ...allPages().map(({ id }) => id)];
    const words = list.split(',').map((each) => each.trim());
    for (const each of words) {
        if (known.includes(each)) continue;
        const near = nearest(each, known);
        const kinds = withSeverities ? 'severity or rule' : 'rule';
        throw new UsageError(
            `--${option}: there is no ${kinds} ${JSON.stringify(each)}.${near === undefined ? '' : ` Do you mean ${near}?`}`,
        );
    }
    return words;
}

interface ToBeChecked extends OpenFiles {
    /** Of the findings those that count: all, or those that the earlier version has not. */
    readonly gained: (findings: PlacedFinding[]) => Promise<PlacedFinding[]>;
}

async function toBeChecked({ since, staged, gained, as }: Values, names: readonly string[]): Promise<ToBeChecked> {
    if (gained && since === undefined && !staged) throw new UsageError('--gained needs --since REVISION, or --staged.');
    if (staged && (as !== undefined || names.includes(standardInput)))
        throw new UsageError('--staged reads what is staged: give files or nothing.');
    const everything = async (findings: PlacedFinding[]): Promise<PlacedFinding[]> => findings;
    if (since === undefined && !staged) return { ...(await openFiles(names, as)), gained: everything };
    const { openStaged, startOf, gainedSince } = await import('./gained');
    const open = staged ? await openStaged(names) : await openFiles(names, as);
    const repository = await repositoryHere();
    const from = await startOf(repository, since, staged);
    // Before the first commit all is new.
    if (from === undefined) return { ...open, gained: everything };
    const changes = await changesIn(repository, from, staged ? stagedIndex : undefined);
    const documents = await touchedBy(changes, repository, open.workshop, open.documents);
    return {
        workshop: open.workshop,
        documents,
        gained: gained
            ? (findings) => gainedSince(repository, from, changes, { workshop: open.workshop, documents }, findings)
            : everything,
    };
}

/** Without a repository, or without git, sources are named from here. */
async function sourcesTop(): Promise<string> {
    const repository = await Repository.of(process.cwd()).catch(() => undefined);
    return repository?.top ?? process.cwd();
}
