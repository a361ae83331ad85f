/** @type {import("next").NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  devIndicators: false,
  // Title and description stand in the head of every answer: streamed in later they would need a script to get there.
  htmlLimitedBots: /.*/,
  // The page's types are checked by `npm run types`, tests and all; the build looks at what it ships.
  typescript: { tsconfigPath: ".config/tsconfig.next.json" },
  turbopack: { root: import.meta.dirname },
  // Loaded from node_modules as they are: they bring files of their own, or must be the same one for server and pages.
  serverExternalPackages: ["@electric-sql/pglite", "kysely", "nodemailer", "pdfkit", "fontkit", "pg", "pino"],
  images: { unoptimized: true },
};
