import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { ArtifactLocation, Log, Message, PhysicalLocation, ReportingDescriptor, Result, Suppression } from 'sarif';
import { version } from '../../../package.json';
import type { Severity } from '../../../shared/recipe/finding';
import { plainJson } from '../../../shared/review/one-line';
import { pageText } from '../../../shared/rules/page';
import type { PlacedFinding, PlacedSilenced, ReportPlace } from '../../report/placed-finding';
import { allPages, rulePage } from '../../rule-pages';
import type { CheckReport } from './check-report';

/**
 * SARIF 2.1.0 (OASIS Standard, 27 March 2020): every rule with its explanation page, every finding
 * as a result. Files are named from the top of the sources, with forward slashes.
 */
export function sarifReport({ files, findings, silenced, root }: CheckReport): string {
    const rules = rulesFor([...findings, ...silenced]);
    const indexOf = ({ finding }: PlacedFinding): number => places.get(finding.rule) ?? -1;
    const places = new Map(rules.map(({ id }, index) => [id, index]));
    const log: Log = {
        $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
        version: '2.1.0',
        runs: [
            {
                tool: { driver: { name: 'kerfbook', version, rules } },
                columnKind: 'utf16CodeUnits',
                invocations: [{ executionSuccessful: true }],
                artifacts: files.map((file) => ({ location: locationOf(file, root), roles: ['analysisTarget'] })),
                // Either all results have `suppressions` or none (3.27.23, from memory): an empty list is "nobody allows it".
                results: [
                    ...findings.map((placed) => ({ ...result(placed, indexOf(placed), root), suppressions: [] })),
                    ...silenced.map((placed) => ({
                        ...result(placed, indexOf(placed), root),
                        suppressions: [suppression(placed, root)],
                    })),
                ],
            },
        ],
    };
    return `${plainJson(log)}\n`;
}

/** All rules that have a page, and those that spoke without one. */
function rulesFor(findings: readonly PlacedFinding[]): ReportingDescriptor[] {
    const paged = allPages().map((page): ReportingDescriptor => {
        const text = pageText(page);
        return {
            id: page.id,
            shortDescription: { text: page.title },
            fullDescription: { text: page.condition },
            defaultConfiguration: { level: levels[page.severities[0] ?? 'warning'] },
            help: { text, markdown: text },
        };
    });
    const others = new Set(findings.map(({ finding }) => finding.rule).filter((rule) => rulePage(rule) === undefined));
    return [...paged, ...[...others].map((id) => ({ id, shortDescription: { text: id.replaceAll('-', ' ') } }))];
}

function result({ finding, related, ...place }: PlacedFinding, ruleIndex: number, root: string): Result {
    const relatedLocations = related.map((other, id) => ({
        id,
        physicalLocation: physical(other, root),
        message: message(other.message),
    }));
    return {
        ruleId: finding.rule,
        ruleIndex,
        level: levels[finding.severity],
        message: message(finding.message),
        locations: [{ physicalLocation: physical(place, root) }],
        ...(relatedLocations.length > 0 && { relatedLocations }),
    };
}

/** 3.35: by a line of the source itself, with the reason that stands there. */
function suppression({ reason, allowed }: PlacedSilenced, root: string): Suppression {
    return {
        kind: 'inSource',
        ...(reason !== '' && { justification: reason }),
        ...(allowed !== undefined && { location: { physicalLocation: physical(allowed, root) } }),
    };
}

const levels: Readonly<Record<Severity, Result.level>> = { error: 'error', warning: 'warning', info: 'note', hint: 'note' };

function physical({ file, line, column, endLine, endColumn }: ReportPlace, root: string): PhysicalLocation {
    return {
        artifactLocation: locationOf(file, root),
        region: { startLine: line, startColumn: column, endLine, endColumn },
    };
}

/** Relative to the sources' top where it lies below it (3.4.4 uriBaseId); an absolute address otherwise. */
function locationOf(file: string, root: string): ArtifactLocation {
    if (/^[a-z][a-z-]+:\//.test(file)) return { uri: file };
    const full = path.resolve(file);
    const relative = path.relative(root, full);
    if (relative.startsWith('..') || path.isAbsolute(relative)) return { uri: pathToFileURL(full).toString() };
    return { uri: relative.split(path.sep).map(encodeURIComponent).join('/'), uriBaseId: '%SRCROOT%' };
}

/** Braces would be placeholders (3.11.5) and square brackets links (3.11.6). */
function message(text: string): Message {
    return { text: text.replace(/[{}]/g, '$&$&').replace(/[\\[\]]/g, '\\$&') };
}
