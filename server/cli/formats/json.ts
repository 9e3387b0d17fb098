import { plainJson } from '../../../shared/review/one-line';
import { type CheckReport, counts } from './check-report';

/** Version of the JSON's shape: goes up when a reader would have to change. */
const schema = 1 as const;

export function jsonReport(report: CheckReport): string {
    return `${plainJson(checkJson(report))}\n`;
}

export function checkJson({ files, findings, silenced, notes }: CheckReport) {
    return {
        schema,
        files,
        counts: counts(findings),
        findings: findings.map(({ finding, related, ...place }) => ({
            ...place,
            rule: finding.rule,
            severity: finding.severity,
            message: finding.message,
            related,
            fixes: finding.fixes.map((fix) => fix.title),
        })),
        allowed: silenced.map(({ finding, related: _, reason, allowed, ...place }) => ({
            ...place,
            rule: finding.rule,
            severity: finding.severity,
            message: finding.message,
            reason,
            ...(allowed && { allowed }),
        })),
        recipes: notes,
    };
}
