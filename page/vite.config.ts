import { defineConfig } from "vitest/config";

export default defineConfig({
  base: "./",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  server: { fs: { allow: [".."] } },
  build: {
    target: "es2022",
    assetsInlineLimit: 0,
    modulePreload: false,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      // One classic script: a page that is opened as a file may load no module.
      output: { format: "iife", entryFileNames: "page.js", assetFileNames: "[name][extname]" },
    },
  },
  test: { include: ["tests/unit/**/*.test.ts"] },
});
