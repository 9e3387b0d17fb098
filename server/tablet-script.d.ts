/** What the page for the tablet runs (extension/tablet), built as one text; the build puts it in. */
declare module 'tablet-script' {
    const script: import('../shared/tablet/tablet-page').PageScript;
    export default script;
}
