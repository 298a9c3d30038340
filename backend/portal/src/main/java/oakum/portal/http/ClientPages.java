package oakum.portal.http;

import java.time.Duration;
import java.util.List;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.ViewControllerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Serves the client: its addresses answer with its one page, its files may be kept by browsers. The addresses are listed
 * one by one, so that a wrong one is still a 404.
 */
@Configuration(proxyBeanMethods = false)
class ClientPages implements WebMvcConfigurer {
    private static final String FILES = "classpath:/META-INF/resources/";

    /** Every address of the client; its own list of routes is held against this one by a test of the client. */
    static final List<String> ADDRESSES = List.of(
            "/",
            "/houses",
            "/houses/{house}",
            "/houses/{house}/record",
            "/houses/{house}/record/{part}",
            "/houses/{house}/walls/{assembly}",
            "/houses/{house}/joins",
            "/houses/{house}/decisions",
            "/houses/{house}/decisions/{code}",
            "/houses/{house}/changes",
            "/houses/{house}/changes/trial",
            "/houses/{house}/proofs",
            "/houses/{house}/proofs/{proof}",
            "/houses/{house}/calculations",
            "/houses/{house}/calculations/{id}",
            "/houses/{house}/site",
            "/houses/{house}/cover-checks/{check}",
            "/houses/{house}/loose-ends",
            "/houses/{house}/setting-to-work",
            "/houses/{house}/setting-to-work/{sheet}",
            "/houses/{house}/readings",
            "/houses/{house}/owner",
            "/houses/{house}/papers",
            "/houses/{house}/care",
            "/rounds",
            "/rounds/{round}",
            "/visits/{visit}",
            "/filters/{house}/{filter}",
            "/stock",
            "/calculations",
            "/calculations/{id}",
            "/materials",
            "/rules",
            "/people",
            "/tokens",
            "/audit");

    @Override
    public void addViewControllers(ViewControllerRegistry registry) {
        for (String address : ADDRESSES) {
            registry.addViewController(address).setViewName("forward:/index.html");
        }
    }

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry registry) {
        // these names carry the hash of what is in them: another content is another name
        registry.addResourceHandler("/assets/**")
                .addResourceLocations(FILES + "assets/")
                .setCacheControl(
                        CacheControl.maxAge(Duration.ofDays(365)).cachePublic().immutable());
        registry.addResourceHandler("/**").addResourceLocations(FILES).setCacheControl(CacheControl.noCache());
    }
}
