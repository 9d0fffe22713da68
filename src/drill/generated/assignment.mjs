// Made from docs/schema/assignment.schema.json by scripts/schemas.mjs. Change the schema, not this file.
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};

// node_modules/ajv/dist/runtime/ucs2length.js
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "assignment.schema.json", "title": "Assignment", "description": "Drills that an instructor sets: ohmward drill --assignment FILE --student NAME.", "type": "object", "required": ["assignment", "drills"], "additionalProperties": false, "properties": { "assignment": { "title": "Name", "description": "Short name, written into each student's file.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["hall-week-3"] }, "title": { "title": "Heading", "description": "What the students read above the list.", "type": "string", "minLength": 1, "maxLength": 200 }, "drills": { "title": "Drills", "description": "In the order in which they are done.", "type": "array", "minItems": 1, "maxItems": 50, "items": { "title": "AssignedDrill", "type": "object", "additionalProperties": false, "required": ["procedure", "level"], "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure, or of a circuit for a drill without one.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["hall-no-signal"] }, "level": { "title": "Level", "description": "How much help there is, or what makes it harder.", "enum": ["named", "unnamed", "blind", "intermittent", "double", "misled"] }, "seed": { "title": "Seed", "description": "A number gives every student the same vehicle; own gives each their own, from the name.", "default": "own", "anyOf": [{ "const": "own" }, { "type": "integer", "minimum": 0, "maximum": 4294967295 }] }, "limit-minutes": { "title": "Time limit", "description": "Minutes on the clock; over it there are no points for time.", "type": "number", "exclusiveMinimum": 0, "maximum": 600 } } } } } };
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var func2 = require_ucs2length().default;
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.assignment === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "assignment" }, message: "must have required property 'assignment'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.drills === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "drills" }, message: "must have required property 'drills'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "assignment" || key0 === "title" || key0 === "drills")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.assignment !== void 0) {
      let data0 = data.assignment;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err3 = { instancePath: instancePath + "/assignment", schemaPath: "#/properties/assignment/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.assignment, data: data0 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/assignment", schemaPath: "#/properties/assignment/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.assignment.type, parentSchema: schema11.properties.assignment, data: data0 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data1 = data.title;
      if (typeof data1 === "string") {
        if (func2(data1) > 200) {
          const err5 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (func2(data1) < 1) {
          const err6 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.title.type, parentSchema: schema11.properties.title, data: data1 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.drills !== void 0) {
      let data2 = data.drills;
      if (Array.isArray(data2)) {
        if (data2.length > 50) {
          const err8 = { instancePath: instancePath + "/drills", schemaPath: "#/properties/drills/maxItems", keyword: "maxItems", params: { limit: 50 }, message: "must NOT have more than 50 items", schema: 50, parentSchema: schema11.properties.drills, data: data2 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        if (data2.length < 1) {
          const err9 = { instancePath: instancePath + "/drills", schemaPath: "#/properties/drills/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.drills, data: data2 };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        const len0 = data2.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data3 = data2[i0];
          if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
            if (data3.procedure === void 0) {
              const err10 = { instancePath: instancePath + "/drills/" + i0, schemaPath: "#/properties/drills/items/required", keyword: "required", params: { missingProperty: "procedure" }, message: "must have required property 'procedure'", schema: schema11.properties.drills.items.required, parentSchema: schema11.properties.drills.items, data: data3 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            if (data3.level === void 0) {
              const err11 = { instancePath: instancePath + "/drills/" + i0, schemaPath: "#/properties/drills/items/required", keyword: "required", params: { missingProperty: "level" }, message: "must have required property 'level'", schema: schema11.properties.drills.items.required, parentSchema: schema11.properties.drills.items, data: data3 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
            for (const key1 in data3) {
              if (!(key1 === "procedure" || key1 === "level" || key1 === "seed" || key1 === "limit-minutes")) {
                const err12 = { instancePath: instancePath + "/drills/" + i0, schemaPath: "#/properties/drills/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.drills.items, data: data3 };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
            if (data3.procedure !== void 0) {
              let data4 = data3.procedure;
              if (typeof data4 === "string") {
                if (!pattern0.test(data4)) {
                  const err13 = { instancePath: instancePath + "/drills/" + i0 + "/procedure", schemaPath: "#/properties/drills/items/properties/procedure/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.drills.items.properties.procedure, data: data4 };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
              } else {
                const err14 = { instancePath: instancePath + "/drills/" + i0 + "/procedure", schemaPath: "#/properties/drills/items/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.drills.items.properties.procedure.type, parentSchema: schema11.properties.drills.items.properties.procedure, data: data4 };
                if (vErrors === null) {
                  vErrors = [err14];
                } else {
                  vErrors.push(err14);
                }
                errors++;
              }
            }
            if (data3.level !== void 0) {
              let data5 = data3.level;
              if (!(data5 === "named" || data5 === "unnamed" || data5 === "blind" || data5 === "intermittent" || data5 === "double" || data5 === "misled")) {
                const err15 = { instancePath: instancePath + "/drills/" + i0 + "/level", schemaPath: "#/properties/drills/items/properties/level/enum", keyword: "enum", params: { allowedValues: schema11.properties.drills.items.properties.level.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.drills.items.properties.level.enum, parentSchema: schema11.properties.drills.items.properties.level, data: data5 };
                if (vErrors === null) {
                  vErrors = [err15];
                } else {
                  vErrors.push(err15);
                }
                errors++;
              }
            }
            if (data3.seed !== void 0) {
              let data6 = data3.seed;
              const _errs15 = errors;
              let valid4 = false;
              const _errs16 = errors;
              if ("own" !== data6) {
                const err16 = { instancePath: instancePath + "/drills/" + i0 + "/seed", schemaPath: "#/properties/drills/items/properties/seed/anyOf/0/const", keyword: "const", params: { allowedValue: "own" }, message: "must be equal to constant", schema: "own", parentSchema: schema11.properties.drills.items.properties.seed.anyOf[0], data: data6 };
                if (vErrors === null) {
                  vErrors = [err16];
                } else {
                  vErrors.push(err16);
                }
                errors++;
              }
              var _valid0 = _errs16 === errors;
              valid4 = valid4 || _valid0;
              if (!valid4) {
                const _errs17 = errors;
                if (!(typeof data6 == "number" && (!(data6 % 1) && !isNaN(data6)) && isFinite(data6))) {
                  const err17 = { instancePath: instancePath + "/drills/" + i0 + "/seed", schemaPath: "#/properties/drills/items/properties/seed/anyOf/1/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.drills.items.properties.seed.anyOf[1].type, parentSchema: schema11.properties.drills.items.properties.seed.anyOf[1], data: data6 };
                  if (vErrors === null) {
                    vErrors = [err17];
                  } else {
                    vErrors.push(err17);
                  }
                  errors++;
                }
                if (typeof data6 == "number" && isFinite(data6)) {
                  if (data6 > 4294967295 || isNaN(data6)) {
                    const err18 = { instancePath: instancePath + "/drills/" + i0 + "/seed", schemaPath: "#/properties/drills/items/properties/seed/anyOf/1/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4294967295 }, message: "must be <= 4294967295", schema: 4294967295, parentSchema: schema11.properties.drills.items.properties.seed.anyOf[1], data: data6 };
                    if (vErrors === null) {
                      vErrors = [err18];
                    } else {
                      vErrors.push(err18);
                    }
                    errors++;
                  }
                  if (data6 < 0 || isNaN(data6)) {
                    const err19 = { instancePath: instancePath + "/drills/" + i0 + "/seed", schemaPath: "#/properties/drills/items/properties/seed/anyOf/1/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.drills.items.properties.seed.anyOf[1], data: data6 };
                    if (vErrors === null) {
                      vErrors = [err19];
                    } else {
                      vErrors.push(err19);
                    }
                    errors++;
                  }
                }
                var _valid0 = _errs17 === errors;
                valid4 = valid4 || _valid0;
              }
              if (!valid4) {
                const err20 = { instancePath: instancePath + "/drills/" + i0 + "/seed", schemaPath: "#/properties/drills/items/properties/seed/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema11.properties.drills.items.properties.seed.anyOf, parentSchema: schema11.properties.drills.items.properties.seed, data: data6 };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              } else {
                errors = _errs15;
                if (vErrors !== null) {
                  if (_errs15) {
                    vErrors.length = _errs15;
                  } else {
                    vErrors = null;
                  }
                }
              }
            }
            if (data3["limit-minutes"] !== void 0) {
              let data7 = data3["limit-minutes"];
              if (typeof data7 == "number" && isFinite(data7)) {
                if (data7 > 600 || isNaN(data7)) {
                  const err21 = { instancePath: instancePath + "/drills/" + i0 + "/limit-minutes", schemaPath: "#/properties/drills/items/properties/limit-minutes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 600 }, message: "must be <= 600", schema: 600, parentSchema: schema11.properties.drills.items.properties["limit-minutes"], data: data7 };
                  if (vErrors === null) {
                    vErrors = [err21];
                  } else {
                    vErrors.push(err21);
                  }
                  errors++;
                }
                if (data7 <= 0 || isNaN(data7)) {
                  const err22 = { instancePath: instancePath + "/drills/" + i0 + "/limit-minutes", schemaPath: "#/properties/drills/items/properties/limit-minutes/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0", schema: 0, parentSchema: schema11.properties.drills.items.properties["limit-minutes"], data: data7 };
                  if (vErrors === null) {
                    vErrors = [err22];
                  } else {
                    vErrors.push(err22);
                  }
                  errors++;
                }
              } else {
                const err23 = { instancePath: instancePath + "/drills/" + i0 + "/limit-minutes", schemaPath: "#/properties/drills/items/properties/limit-minutes/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema11.properties.drills.items.properties["limit-minutes"].type, parentSchema: schema11.properties.drills.items.properties["limit-minutes"], data: data7 };
                if (vErrors === null) {
                  vErrors = [err23];
                } else {
                  vErrors.push(err23);
                }
                errors++;
              }
            }
          } else {
            const err24 = { instancePath: instancePath + "/drills/" + i0, schemaPath: "#/properties/drills/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.drills.items.type, parentSchema: schema11.properties.drills.items, data: data3 };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
      } else {
        const err25 = { instancePath: instancePath + "/drills", schemaPath: "#/properties/drills/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.drills.type, parentSchema: schema11.properties.drills, data: data2 };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
    }
  } else {
    const err26 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err26];
    } else {
      vErrors.push(err26);
    }
    errors++;
  }
  validate10.errors = vErrors;
  return errors === 0;
}
export {
  stdin_default as default,
  validate
};
