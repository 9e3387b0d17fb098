import type { ConfigurationProvider } from 'langium';

/** What the editor's settings say of hints; all are shown as long as they say nothing. */
export class HintWishes {
    private defaults = true;

    /** @param changed hints are to be asked for anew */
    constructor(
        private readonly settings: ConfigurationProvider,
        private readonly changed: () => void,
    ) {
        settings.onConfigurationSectionUpdate(() => void this.read());
    }

    get showsDefaults(): boolean {
        return this.defaults;
    }

    /** Read once the editor has sent its settings, and again whenever they change. */
    async read(): Promise<void> {
        const hints: unknown = await this.settings.getConfiguration('kerfbook', 'hints');
        const shown = !(typeof hints === 'object' && hints !== null && 'defaults' in hints && hints.defaults === false);
        if (shown === this.defaults) return;
        this.defaults = shown;
        this.changed();
    }
}
