import { defineConfig } from "@playwright/test";

const chromium = process.env.CHROMIUM ?? "/usr/bin/chromium";

export default defineConfig({
  testDir: "../tests/browser",
  outputDir: "../.out/browser",
  globalSetup: "../tests/browser/start-demo.ts",
  timeout: 240_000,
  workers: 1,
  fullyParallel: false,
  reporter: [["list"]],
  use: { launchOptions: { executablePath: chromium, args: ["--no-sandbox", "--disable-gpu", "--disable-quic"] }, actionTimeout: 60_000, navigationTimeout: 120_000 },
});
