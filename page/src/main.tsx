import { render } from "preact";
import { App, startPlanning } from "./app";
import { frames, inForce, inputs, lastAgain, startLive, told } from "./state/live";
import { lookForBook } from "./state/book";
import { soFar, busy } from "./state/store";
import "./style.css";

startPlanning();
startLive();
lookForBook();
render(<App />, document.getElementById("page")!);

if ("serviceWorker" in navigator && location.protocol !== "file:") {
  void navigator.serviceWorker.register("./sw.js").catch(() => {});
}

// What the browser tests read: figures, not controls.
Object.assign(globalThis, { wellproofSeen: { frames, lastAgain, told: () => told.value, inputs: () => inputs.value, inForce: () => inForce.value, soFar: () => soFar.value, busy: () => busy.value } });
