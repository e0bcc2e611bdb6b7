import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/board.css";
import "./styles/bench.css";
import "./styles/forms.css";
import "./styles/panels.css";
import "./styles/phone.css";
import "./styles/print.css";
import { addHatches } from "./board/hatches.ts";
import { connect } from "./store/connection.ts";
import { memorySource } from "./store/memory-source.ts";
import { addDrawingStyles } from "./board/drawing-styles.ts";

addDrawingStyles();
addHatches(document.body);
const app = import("./app/mount.tsx");
void connect(memorySource()).then(async () => (await app).mount());
