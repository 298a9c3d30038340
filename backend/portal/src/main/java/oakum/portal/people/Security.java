package oakum.portal.people;

import oakum.portal.http.Problem;
import oakum.portal.http.ProblemWriter;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.crypto.factory.PasswordEncoderFactories;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.security.web.csrf.CsrfFilter;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.session.web.http.CookieSerializer;
import org.springframework.session.web.http.DefaultCookieSerializer;

/** Who gets as far as a controller. Which house and which act is asked by the services, of {@link Access}. */
@Configuration(proxyBeanMethods = false)
class Security {
    /** No inline script, nothing from elsewhere, framed by nobody; drawings and photos may be data or blob images. */
    static final String CONTENT_POLICY =
            "default-src 'self'; img-src 'self' data: blob:; style-src 'self' 'unsafe-inline';"
                    + " object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    @Bean
    PasswordEncoder passwordEncoder() {
        return PasswordEncoderFactories.createDelegatingPasswordEncoder();
    }

    /** Secure follows the request: behind a proxy that ends TLS it is told by the forwarded headers. */
    @Bean
    CookieSerializer cookieSerializer() {
        DefaultCookieSerializer cookies = new DefaultCookieSerializer();
        cookies.setCookieName("OAKUM_SESSION");
        cookies.setUseHttpOnlyCookie(true);
        cookies.setSameSite("Lax");
        return cookies;
    }

    @Bean
    SecurityContextRepository securityContextRepository() {
        return new HttpSessionSecurityContextRepository();
    }

    @Bean
    SecurityFilterChain securityFilterChain(
            HttpSecurity http,
            SecurityContextRepository contexts,
            Tokens tokens,
            SignInLimits limits,
            ProblemWriter problems) {
        PathPatternRequestMatcher.Builder path = PathPatternRequestMatcher.withDefaults();
        http.authorizeHttpRequests(requests -> requests.requestMatchers(HttpMethod.POST, "/api/v1/session")
                .permitAll()
                .requestMatchers(HttpMethod.GET, "/api/v1/openapi", "/api/v1/calendars/**")
                .permitAll()
                .requestMatchers("/api/**")
                .authenticated()
                // the client's own files, its routes and the health of the portal
                .anyRequest()
                .permitAll());
        // signing in needs no token against forged requests: it takes JSON, which no foreign page can send here
        http.csrf(csrf -> csrf.spa()
                .ignoringRequestMatchers(path.matcher(HttpMethod.POST, "/api/v1/session"), BearerFilter::carriesToken));
        http.securityContext(context -> context.securityContextRepository(contexts));
        http.addFilterBefore(new BearerFilter(tokens, limits, problems), CsrfFilter.class);
        http.requestCache(cache -> cache.disable());
        http.httpBasic(basic -> basic.disable());
        http.formLogin(form -> form.disable());
        http.logout(logout -> logout.disable());
        http.exceptionHandling(refusals -> refusals.authenticationEntryPoint(
                        (request, response, e) -> problems.write(response, AccessImpl.signedOut()))
                .accessDeniedHandler((request, response, e) -> problems.write(
                        response,
                        new Problem(
                                HttpStatus.FORBIDDEN,
                                "csrf-token-missing",
                                "A change with a session cookie needs the header X-XSRF-TOKEN with the value of the cookie"
                                        + " XSRF-TOKEN."))));
        http.headers(headers -> headers.contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_POLICY))
                .frameOptions(frames -> frames.deny())
                .referrerPolicy(policy -> policy.policy(ReferrerPolicy.NO_REFERRER)));
        return http.build();
    }
}
