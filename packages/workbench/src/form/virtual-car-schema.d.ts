declare module "virtual:car-schema" {
  const schema: unknown;
  export default schema;
}
