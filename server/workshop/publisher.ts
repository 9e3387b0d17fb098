import { DocumentState, type LangiumDocument } from 'langium';
import type { Connection, Diagnostic } from 'vscode-languageserver';
import { isBuiltIn } from '../../language/built-in';
import { toDiagnostic } from '../../language/diagnostic';
import type { Finding } from '../../shared/recipe/finding';
import { method, type PlannedParams } from '../../shared/view/protocol';
import { isTradeRule } from '../rule-pages';
import type { LastPlans } from './last-plans';
import type { Workshop } from './workshop';

/**
 * Sends findings to the editor: the text's own at once, with those of the trade that still stand
 * on the same words; the trade's as soon as the plan is made.
 */
export class Publisher {
    private readonly trade = new Map<string, { readonly findings: readonly Finding[]; readonly text: string }>();

    constructor(
        private readonly connection: Connection,
        private readonly workshop: Workshop,
        private readonly plans: LastPlans,
    ) {
        const builder = workshop.services.shared.workspace.DocumentBuilder;
        builder.onDocumentPhase(DocumentState.Validated, (document) => {
            if (isBuiltIn(document.uri.toString())) return;
            this.sendText(document);
            // Not awaited: the build goes on, and typing never waits for geometry.
            void this.plan(document);
        });
        builder.onUpdate((_changed, deleted) => {
            for (const uri of deleted) {
                this.trade.delete(uri.toString());
                this.plans.forget(uri.toString());
                void this.connection.sendDiagnostics({ uri: uri.toString(), diagnostics: [] });
            }
        });
    }

    /** Plans a document again though its text has not changed, since its art has. */
    async plan(document: LangiumDocument): Promise<void> {
        const version = document.textDocument.version;
        const survey = await this.workshop.survey(document);
        if (survey === undefined || document.textDocument.version !== version) return;
        const { findings } = survey;
        const uri = document.uri.toString();
        this.plans.keep(uri, survey);
        this.trade.set(uri, { findings, text: document.textDocument.getText() });
        this.send(document, findings);
        const params: PlannedParams = {
            uri,
            textVersion: version,
            recipes: this.workshop.recipes(document).map((recipe) => recipe.name),
        };
        void this.connection.sendNotification(method.planned, params);
    }

    private sendText(document: LangiumDocument): void {
        const old = this.trade.get(document.uri.toString());
        const text = document.textDocument.getText();
        const standing = old?.findings.filter(({ where }) => wordsAt(old.text, where) === wordsAt(text, where)) ?? [];
        this.send(document, standing);
    }

    private send(document: LangiumDocument, trade: readonly Finding[]): void {
        const uri = document.uri.toString();
        const all = [...this.workshop.textFindings(document), ...trade];
        const diagnostics: Diagnostic[] = all
            .filter((finding) => finding.where.uri === uri)
            .map((finding) => toDiagnostic(finding, document, isTradeRule(finding.rule)));
        void this.connection.sendDiagnostics({ uri, version: document.textDocument.version, diagnostics });
    }
}

function wordsAt(text: string, { offset, length }: { offset: number; length: number }): string {
    return text.slice(offset, offset + length);
}
