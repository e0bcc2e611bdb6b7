/** What a browser installs the page by. Icons: `mark.svg` of the public folder, and PNGs that the build draws. */
export const manifest = {
  name: "Armwright",
  short_name: "Armwright",
  description: "Design an off-road car's rear suspension before metal is cut.",
  id: "./",
  start_url: "./",
  scope: "./",
  display: "standalone",
  background_color: "#F3EEE2",
  theme_color: "#F3EEE2",
  icons: [
    { src: "./icon-192.png", sizes: "192x192", type: "image/png", purpose: "any maskable" },
    { src: "./icon-512.png", sizes: "512x512", type: "image/png", purpose: "any maskable" },
    { src: "./mark.svg", sizes: "any", type: "image/svg+xml" },
  ],
} as const;

export const ICON_SIZES = [180, 192, 512] as const;
