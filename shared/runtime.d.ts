// What every place that this code runs in has (Node, a browser, its workers) and the language itself lacks.
declare function btoa(binary: string): string;
declare function atob(text: string): string;
