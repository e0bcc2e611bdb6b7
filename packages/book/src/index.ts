export { writePdf } from "./paper/write-pdf.ts";
