package oakum.portal.weather;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import oakum.physics.weather.WeatherTable;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Page;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import oakum.portal.weather.WeatherYears.Brought;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1")
class WeatherController {
    private static final String EXAMPLE_TABLE = """
            {"headerLine": 1, "firstDataLine": 2, "delimiter": ",", "decimal": ".", "timeColumns": ["time"],
             "timeFormat": "", "clockOffsetH": 0, "dates": "AS_DATED", "sums": "BEFORE_STAMP", "humidity": "OVER_WATER",
             "missing": ["-9900"],
             "columns": [{"column": "temperature", "meaning": "AIR_TEMPERATURE", "unit": "CELSIUS"},
                         {"column": "humidity", "meaning": "RELATIVE_HUMIDITY", "unit": "PERCENT"}]}""";

    private final WeatherYears years;
    private final WeatherTables tables;
    private final WeatherImport importing;
    private final Access access;

    WeatherController(WeatherYears years, WeatherTables tables, WeatherImport importing, Access access) {
        this.years = years;
        this.tables = tables;
        this.importing = importing;
        this.access = access;
    }

    /** One page of weather years and what this person may do with them. */
    record WeatherYearPage(
            List<WeatherYear> items, @Nullable String next, List<String> actions) {}

    /** The names of the column maps, and what this person may do with them. */
    record WeatherTableList(List<String> items, List<String> actions) {}

    @Operation(summary = "The firm's weather years, by place; those that come with the portal first")
    @GetMapping("/weather-years")
    WeatherYearPage listWeatherYears(
            @RequestParam(required = false) @Nullable String cursor, @RequestParam(defaultValue = "50") int limit) {
        Page<WeatherYear> page = years.page(cursor, limit);
        return new WeatherYearPage(page.items(), page.next(), actions("add-weather-year"));
    }

    @Operation(summary = "One weather year, by its hash with or without sha256:")
    @GetMapping("/weather-years/{hash}")
    WeatherYear getWeatherYear(@PathVariable String hash) {
        return years.get(hash);
    }

    @Operation(
            summary = "Add a weather year from a table",
            description =
                    "The file as it is, gzip allowed. format=tmy3 reads typical years as published, which say themselves"
                            + " where they are from; table= names a column map and needs place, latitudeDeg, longitudeDeg,"
                            + " altitudeM, standardOffsetH (hours ahead of UTC, without summer time) and source. Sent"
                            + " again, nothing doubles: 200 with the year that is there.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = "text/csv",
                                            schema = @Schema(type = "string", format = "binary"))))
    @PostMapping(path = "/weather-years", consumes = "text/csv")
    ResponseEntity<WeatherYear> addWeatherYear(
            @RequestParam(required = false) @Nullable String format,
            @RequestParam(required = false) @Nullable String table,
            @RequestParam(required = false) @Nullable String place,
            @RequestParam(required = false) @Nullable Double latitudeDeg,
            @RequestParam(required = false) @Nullable Double longitudeDeg,
            @RequestParam(required = false) @Nullable Double altitudeM,
            @RequestParam(required = false) @Nullable Double standardOffsetH,
            @RequestParam(required = false) @Nullable String source,
            @RequestParam(required = false) @Nullable String attribution,
            HttpServletRequest request)
            throws IOException {
        Charset named = MediaType.parseMediaType(request.getContentType()).getCharset();
        return answer(importing.bring(
                format,
                table,
                new WeatherImport.Said(place, latitudeDeg, longitudeDeg, altitudeM, standardOffsetH, source),
                attribution,
                request.getInputStream(),
                request.getContentLengthLong(),
                named == null ? StandardCharsets.UTF_8 : named));
    }

    @Operation(summary = "Add a synthetic year made from twelve months of normals")
    @PostMapping("/weather-years/from-normals")
    ResponseEntity<WeatherYear> addWeatherYearFromNormals(@RequestBody NormalsSent normals) {
        return answer(years.keep(normals));
    }

    @Operation(summary = "The names of the column maps of weather tables")
    @GetMapping("/weather-tables")
    WeatherTableList listWeatherTables() {
        return new WeatherTableList(tables.names(), actions("keep-weather-table"));
    }

    @Operation(summary = "A column map of weather tables")
    @GetMapping("/weather-tables/{name}")
    ResponseEntity<WeatherTable> getWeatherTable(@PathVariable String name) {
        return tagged(tables.get(name));
    }

    @Operation(
            summary = "Keep a column map of weather tables",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = "application/json",
                                            schema = @Schema(implementation = WeatherTable.class),
                                            examples = @ExampleObject(EXAMPLE_TABLE))))
    @PutMapping("/weather-tables/{name}")
    ResponseEntity<WeatherTable> putWeatherTable(
            @PathVariable String name,
            @RequestBody WeatherTable map,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        return tagged(tables.put(name, map, ifMatch));
    }

    private List<String> actions(String act) {
        return access.mayAnywhere(Permission.KEEP_WEATHER) ? List.of(act) : List.of();
    }

    private static ResponseEntity<WeatherYear> answer(Brought brought) {
        URI at = URI.create("/api/v1/weather-years/" + brought.year().id());
        return brought.added()
                ? ResponseEntity.created(at).body(brought.year())
                : ResponseEntity.ok().location(at).body(brought.year());
    }

    private static ResponseEntity<WeatherTable> tagged(WeatherTables.KeptTable kept) {
        return ResponseEntity.ok().eTag(EntityTag.of(kept.version())).body(kept.map());
    }
}
